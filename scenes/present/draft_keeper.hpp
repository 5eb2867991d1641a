#pragma once

#include "scenes/present/order_draft.hpp"

// An instructor's draft as it is kept between two windows, whether it was saved or not.

namespace scenes {

/// A draft and where it stands.
struct KeptDraft {
    DraftValues values;
    std::string path;     ///< the person's own file that it came from; empty for a new one
    bool is_saved = true; ///< whether everything put down is in that file

    bool operator==(const KeptDraft&) const = default;
};

/// A draft as text, its answer encoded as in an order's file, and back.
///
/// throws:  AssetError when the text is no draft, or of a machine or work there is no more
std::string draft_text(const KeptDraft& draft, shop::Workshops& workshops);
KeptDraft read_draft(const std::string& text, const std::string& name, shop::Workshops& workshops);

/// Keeps a draft on the disk while it is worked on, so that a crash or a power cut loses half a
/// second of it at most. Each window has a place of its own in the folder.
class DraftKeeper {
public:
    /// An empty folder keeps nothing.
    explicit DraftKeeper(std::string folder = {}) : folder_(std::move(folder)) {}
    ~DraftKeeper();
    DraftKeeper(const DraftKeeper&) = delete;
    DraftKeeper& operator=(const DraftKeeper&) = delete;
    DraftKeeper(DraftKeeper&& other) noexcept;
    DraftKeeper& operator=(DraftKeeper&& other) noexcept;

    /// Takes a place that no other window has, and gives the draft that lies there; one that was
    /// not saved before one that was.
    std::optional<KeptDraft> take(shop::Workshops& workshops);
    /// Where a draft lies that could not be read, and why; empty when there was none.
    [[nodiscard]] const std::string& set_aside() const { return set_aside_; }
    [[nodiscard]] const std::string& set_aside_reason() const { return set_aside_reason_; }

    /// Whether it is time to keep the draft again, which is twice a second.
    ///
    /// unit:    real seconds since the last call
    bool is_due(double seconds);
    /// Writes the draft where it has changed, and gives whether it is on the disk.
    bool keep(const KeptDraft& draft, shop::Workshops& workshops);
    /// Why the draft is not kept; empty while it is.
    [[nodiscard]] const std::string& trouble() const { return trouble_; }

private:
    /// Locks a place; gives whether no other window has it.
    bool claim(const std::string& path);
    void let_go();
    std::optional<KeptDraft> look(const std::string& path, shop::Workshops& workshops);

    std::string folder_;
    std::string path_; ///< of the place taken; empty before
    int lock_ = -1;
    std::optional<KeptDraft> kept_; ///< what is on the disk
    double waited_ = 0.0;           ///< s since it was last due
    std::string set_aside_;
    std::string set_aside_reason_;
    std::string trouble_;
};

} // namespace scenes
