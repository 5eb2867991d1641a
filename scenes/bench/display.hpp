#pragma once

namespace scenes {

/// Makes sure that there is a display to draw on; the window library would end the program.
///
/// throws:  RequestError when there is none
void require_display();

} // namespace scenes
