#pragma once

#include "scenes/drips/drips.hpp"
#include "scenes/present/bench_model.hpp"
#include "scenes/view/camera.hpp"
#include "scenes/view/mesh.hpp"
#include "scenes/view/theme.hpp"

#include <optional>
#include <vector>

namespace scenes {

/// The drops and pools of the machine on the bench.
class BenchDrips {
public:
    explicit BenchDrips(const sim::Rig& rig);

    /// Goes on to where the machine is now, with what its floor has gained.
    void follow(BenchModel& model);
    void draw(Mesh& mesh, const Look& look, const Camera& camera) const;

private:
    struct Mouth {
        std::size_t flow = 0; ///< the reading
        double outward = 0.0; ///< 0: no reading tells it
    };
    void take_run(BenchModel& model);
    void look_at_flows(BenchModel& model);
    /// Puts the drops where they are after some seconds of the flows that run now.
    void rebuild(double leaked);
    void draw_pool(Mesh& mesh, const Look& look, const Camera& camera, const Pool& pool) const;

    DripGround ground_;
    std::vector<std::pair<std::string, double>> mouth_readings_;
    std::optional<Drips> drips_; ///< none where the rig has no floor or nothing that leaks
    std::vector<Mouth> mouths_;
    std::vector<double> flows_;
    std::vector<double> masses_;
    std::size_t floor_ = 0; ///< state
    double density_ = 745.0;
    int run_number_ = -1;
    double seconds_ = 0.0;
};

} // namespace scenes
