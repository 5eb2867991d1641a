#pragma once

#include "scenes/shop/attempt.hpp"

namespace shop {

/// An action as the JSON object that records and files of actions hold:
/// {"do":"predict","check":"...","reading":"...","guess":"..."}
/// {"do":"check","check":"...","heeded":["..."]}
/// {"do":"repair","repair":"...","heeded":["..."]}
/// {"do":"suspect","causes":["..."]}
/// {"do":"finding","causes":["..."],"advice":"clean","minutes":20,"money":5,"note":"..."}
/// {"do":"hand_in"}
nlohmann::ordered_json action_json(const Action& action);

/// The action of such an object; `heeded` and `note` may be left out.
///
/// throws:  AssetError
Action read_action(const sim::JsonNode& node);

/// The actions of a file {"format":1,"actions":[...]}.
///
/// throws:  AssetError
std::vector<Action> load_actions(const std::string& path);

} // namespace shop
