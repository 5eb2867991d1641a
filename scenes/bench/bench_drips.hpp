#pragma once

#include "scenes/bench/drop_sprites.hpp"
#include "scenes/drips/drip_follower.hpp"
#include "scenes/view/camera.hpp"
#include "scenes/view/mesh.hpp"
#include "scenes/view/theme.hpp"

namespace scenes {

/// The drops and pools of the machine on the bench, in its drawing.
class BenchDrips {
public:
    explicit BenchDrips(const sim::Rig& rig);

    /// Goes on to where the machine is; another run number is another machine.
    void follow(sim::Simulator& machine, const std::vector<double>& values, int run_number);
    /// Puts pools, and drops drawn very large, into the mesh; the other drops are for `draw`.
    ///
    /// unit:    pixels; drops outside the area are left out
    void lay_out(Mesh& mesh, const Look& look, const Camera& camera, const sf::FloatRect& area);
    void draw(sf::RenderTarget& target) const { sprites_.draw(target); }
    void shed(double kg) { follower_.shed(kg); }
    [[nodiscard]] std::size_t count() const
    {
        return follower_.drips() ? follower_.drips()->drops().size() : 0;
    }

private:
    void draw_pool(Mesh& mesh, const Look& look, const Camera& camera, const Pool& pool) const;
    void draw_drop(Mesh& mesh, const Look& look, const Camera& camera, const Drop& drop,
                   const sf::FloatRect& area);

    DripGround ground_;
    DripFollower follower_;
    DropSprites sprites_;
    int run_number_ = -1;
};

} // namespace scenes
