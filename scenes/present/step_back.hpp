#pragma once

namespace scenes {

/// Lets everything else go before this thread, and before those it begins. Linux only.
void step_back();

} // namespace scenes
