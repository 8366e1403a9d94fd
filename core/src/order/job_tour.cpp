// SPDX-License-Identifier: MIT
#include "detail_job_tour.hpp"

#include <algorithm>

#include "detail_work.hpp"

namespace seamturn::order {

namespace {

constexpr Step no_step{-1, -1};

class Maker {
 public:
  Maker(const Job& job, const Precedence& precedence, const Zones& zones)
      : job_(job), zones_(zones), retract_s_(air_s(job, job.retract_mm)) {
    find_first_blocks(precedence);
  }

  JobTour make() {
    add_vertices();
    for (std::size_t b = 0; b < job_.blocks.size(); ++b) {
      out_.always_s += work_s(job_, job_.blocks[b]) + (is_first_[b] ? job_.blocks[b].touch_s : 0.0);
    }
    out_.always_s += least_heat_s(job_, zones_) + least_clean_s(job_, least_cleanings(job_));
    const auto count = static_cast<int>(out_.step_of.size());
    out_.problem.cost.assign(out_.step_of.size() * out_.step_of.size(), never_s);
    for (int from = 0; from + 1 < count; ++from) {
      for (int to = 1; to < count; ++to) {
        if (group_of(from) == group_of(to)) continue;
        out_.problem.cost[static_cast<std::size_t>(from * count + to)] = leg_s(from, to);
      }
    }
    return std::move(out_);
  }

 private:
  /// Of each zone the block that comes before all its others, if there is one: it always touches,
  /// and where a torch heats it is always heated.
  void find_first_blocks(const Precedence& precedence) {
    is_first_.assign(job_.blocks.size(), true);
    for (std::size_t b = 0; b < job_.blocks.size(); ++b) {
      for (std::size_t other = 0; other < job_.blocks.size() && is_first_[b]; ++other) {
        const bool same_zone = other != b && zones_.of_block[other] == zones_.of_block[b];
        if (same_zone && !precedence.before(static_cast<int>(b), static_cast<int>(other))) {
          is_first_[b] = false;
        }
      }
    }
  }

  void add_vertices() {
    const auto last = static_cast<int>(job_.blocks.size()) + 1;
    add_group({no_step}, 0);
    for (int b = 0; b + 1 < last; ++b) {
      std::vector<Step> steps;
      const Block& block = job_.blocks[static_cast<std::size_t>(b)];
      for (std::size_t o = 0; o < block.options.size(); ++o) {
        steps.push_back(Step{b, static_cast<int>(o)});
      }
      add_group(steps, b + 1);
      for (const int before : block.after) out_.problem.before.back().push_back(before + 1);
    }
    add_group({no_step}, last);
  }

  void add_group(const std::vector<Step>& steps, int group) {
    out_.problem.vertices.emplace_back();
    out_.problem.before.emplace_back();
    for (const Step& step : steps) {
      out_.problem.vertices.back().push_back(static_cast<int>(out_.step_of.size()));
      out_.problem.group_of.push_back(group);
      out_.step_of.push_back(step);
    }
  }

  [[nodiscard]] int group_of(int vertex) const {
    return out_.problem.group_of[static_cast<std::size_t>(vertex)];
  }
  [[nodiscard]] const Block& block_at(int vertex) const {
    const Step& step = out_.step_of[static_cast<std::size_t>(vertex)];
    return job_.blocks[static_cast<std::size_t>(step.block)];
  }
  [[nodiscard]] const Option& option_at(int vertex) const {
    const Step& step = out_.step_of[static_cast<std::size_t>(vertex)];
    return block_at(vertex).options[static_cast<std::size_t>(step.option)];
  }
  [[nodiscard]] bool is_end(int vertex) const {
    return out_.step_of[static_cast<std::size_t>(vertex)] == no_step;
  }
  [[nodiscard]] double turn_s(int from, int to) const {
    return job_.turn_s[static_cast<std::size_t>(from)][static_cast<std::size_t>(to)];
  }

  /// From the end of a vertex's last pass, torch withdrawn, to the approach of the next one.
  [[nodiscard]] double way_s(int from, int to) const {
    const bool starts = is_end(from);
    const geom::Vec3& from_W = starts ? job_.home_W : option_at(from).end_W;
    const int stance = starts ? job_.start_stance : option_at(from).stance;
    const double home_s = starts ? 0.0 : air_s(job_, from_W, job_.home_W);
    if (is_end(to)) return home_s + (job_.end_stance ? turn_s(stance, *job_.end_stance) : 0.0);
    const Option& option = option_at(to);
    if (stance == option.stance && !goes_home_before(to)) {
      return air_s(job_, from_W, option.start_W);
    }
    return home_s + turn_s(stance, option.stance) + air_s(job_, job_.home_W, option.start_W);
  }

  /// People work at the part before it, in every order.
  [[nodiscard]] bool goes_home_before(int vertex) const {
    const Block& block = block_at(vertex);
    const int index = out_.step_of[static_cast<std::size_t>(vertex)].block;
    const bool by_torch = block.heat_s > 0.0 && !(job_.heat_once_s > 0.0);
    return block.gouge_s > 0.0 || (by_torch && is_first_[static_cast<std::size_t>(index)]);
  }

  [[nodiscard]] bool turns(int from, int to) const {
    const int stance = is_end(from) ? job_.start_stance : option_at(from).stance;
    return stance != option_at(to).stance;
  }

  [[nodiscard]] double leg_s(int from, int to) const {
    const double way = way_s(from, to);
    if (is_end(to)) return way;
    const Block& block = block_at(to);
    const int index = out_.step_of[static_cast<std::size_t>(to)].block;
    const bool counted = is_first_[static_cast<std::size_t>(index)];
    const bool touches = is_end(from) || turns(from, to);
    const double touch_s = touches && !counted ? block.touch_s : 0.0;
    return way + touch_s + wait_s(from, to, way + touch_s) + inside_s(job_, block, option_at(to));
  }

  /// Wait that nothing fills when both lie in one place and follow each other at once. A cleaning
  /// between them may take the place of the wait, and is counted by itself.
  [[nodiscard]] double wait_s(int from, int to, double way_s) const {
    if (is_end(from) || block_at(from).work_s || block_at(to).work_s) return 0.0;
    const Block& before = block_at(from);
    const Block& block = block_at(to);
    const auto zone = [&](int vertex) {
      const int index = out_.step_of[static_cast<std::size_t>(vertex)].block;
      return zones_.of_block[static_cast<std::size_t>(index)];
    };
    const bool heats_between = block.heat_s > 0.0 && !(before.heat_s > 0.0);
    if (zone(from) != zone(to) || heats_between) return 0.0;
    const BlockPass& last = before.passes.back();
    const BlockPass& pass = block.passes.front();
    ZoneState state;
    state.last_end_s = last.arc_s;
    state.course = option_at(from).course;
    const double now_s =
        last.arc_s + 2.0 * retract_s_ + last.unwind_s + way_s + block.gouge_s + before_arc_s(pass);
    return std::max(0.0, ready_s(state, pass, option_at(to).course) - now_s - job_.clean_s);
  }

  const Job& job_;
  const Zones& zones_;
  double retract_s_;
  std::vector<bool> is_first_;
  JobTour out_;
};

}  // namespace

std::size_t job_tour_size(const Job& job) {
  std::size_t count = 2;
  for (const Block& block : job.blocks) count += block.options.size();
  return count;
}

JobTour job_tour(const Job& job, const Precedence& precedence, const Zones& zones) {
  return Maker(job, precedence, zones).make();
}

Sequence sequence_of(const JobTour& tour, const Tour& vertices) {
  Sequence sequence;
  for (const int vertex : vertices) {
    const Step& step = tour.step_of[static_cast<std::size_t>(vertex)];
    if (!(step == no_step)) sequence.push_back(step);
  }
  return sequence;
}

Tour tour_of(const JobTour& tour, const Sequence& sequence) {
  Tour vertices = {0};
  for (const Step& step : sequence) {
    const auto& group = tour.problem.vertices[static_cast<std::size_t>(step.block) + 1];
    vertices.push_back(group[static_cast<std::size_t>(step.option)]);
  }
  vertices.push_back(static_cast<int>(tour.step_of.size()) - 1);
  return vertices;
}

}  // namespace seamturn::order
