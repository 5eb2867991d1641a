#pragma once

#include <ctime>
#include <string>
#include <string_view>
#include <vector>

// Where a person's run sheets lie.

namespace scenes {

/// The folder for run sheets of this person; below the present folder when there is no other.
std::string runs_folder();

/// The folder for exported charts: the person's documents, as XDG_DOCUMENTS_DIR in the environment
/// or in the user-dirs file says, else "Documents" in the home folder, else the home folder.
///
/// source:  xdg-user-dirs, user-dirs.dirs(5)
std::string charts_folder();

/// A path in a folder for a file made at a time: a word, date, time of day, and a number where that
/// name is taken.
std::string new_path(const std::string& folder, const std::string& word, std::time_t now,
                     std::string_view extension);
/// The same for a run of a rig.
std::string new_run_path(const std::string& folder, const std::string& rig, std::time_t now);

/// The run sheets in a folder, those with the latest names first; none when there is no folder.
std::vector<std::string> saved_runs(const std::string& folder);

/// A path as people write it: the home folder as "~".
std::string short_path(const std::string& path);

/// Makes the folder a file lies in.
///
/// throws:  RequestError when it cannot be made
void make_folder_for(const std::string& path);

} // namespace scenes
