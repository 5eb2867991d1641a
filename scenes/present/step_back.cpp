#include "scenes/present/step_back.hpp"

#if defined(__linux__)
#include <sys/resource.h>
#endif

namespace scenes {

void step_back()
{
#if defined(__linux__)
    constexpr int lowest = 19;
    setpriority(PRIO_PROCESS, 0, lowest); // a thread's own there
#endif
}

} // namespace scenes
