#pragma once

#include "scenes/bench/bench_layout.hpp"
#include "scenes/present/settings.hpp"

namespace scenes {

/// The bench for the back row: the drawing, the line of messages, and of the rest what was chosen.
/// A panel that would leave the drawing less than half of the width is left out.
BenchLayout lay_out_projector(sf::Vector2f window, const Look& look, const ProjectorParts& parts,
                              const BenchNeeds& needs);

/// Width that the line of messages has.
float projector_status_width(sf::Vector2f window, const Look& look);

} // namespace scenes
