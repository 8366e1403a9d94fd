// SPDX-License-Identifier: MIT
// tests/good/ordered.xml with some of its joints, in segments as each test asks.
#pragma once

#include "ordered_part.hpp"

namespace seamturn::tests {

/// tests/good/ordered.xml with some joints only, and what a file says of segments.
inline planner::Inputs part_of(const std::vector<std::string>& joints) {
  planner::Inputs inputs = ordered_part();
  std::erase_if(inputs.weldment.joints, [&](const joint::Joint& joint) {
    return std::find(joints.begin(), joints.end(), joint.id) == joints.end();
  });
  return inputs;
}

inline void ask(planner::Inputs& inputs,
                const std::string& id,
                int segments,
                double overlap_mm = 0.0) {
  for (joint::Seam& seam : joint_in(inputs, id).seams) {
    seam.asked.segments = segments;
    seam.asked.stop_stagger_mm = 30.0;
    seam.asked.overlap_mm = overlap_mm;
  }
}

inline std::vector<const plan::PlannedSeam*> segments_of(const Plan& plan,
                                                         const std::string& joint) {
  std::vector<const plan::PlannedSeam*> seams;
  for (const plan::PlannedJoint& planned : plan.joints) {
    if (planned.id != joint) continue;
    for (const plan::PlannedSeam& seam : planned.seams) seams.push_back(&seam);
  }
  return seams;
}

/// First start and last end of a layer.
inline Span layer_span(const plan::PlannedSeam& seam, int layer) {
  Span span{1e12, -1.0};
  for (const plan::PlannedPass& pass : seam.passes) {
    if (pass.pass.layer != layer) continue;
    span.from_s = std::min(span.from_s, *pass.start_s);
    span.to_s = std::max(span.to_s, *pass.end_s);
  }
  return span;
}

/// Ids in the order in which a layer is laid.
inline std::string order_of_layer(const Plan& plan, const std::string& joint, int layer) {
  std::vector<const plan::PlannedSeam*> seams = segments_of(plan, joint);
  std::sort(seams.begin(), seams.end(), [&](const auto* a, const auto* b) {
    return layer_span(*a, layer).from_s < layer_span(*b, layer).from_s;
  });
  std::string order;
  for (const plan::PlannedSeam* seam : seams) order += seam->id + ' ';
  return order;
}

inline double sum_of(const Plan& plan, const std::string& joint, double plan::PlannedSeam::*value) {
  double sum = 0.0;
  for (const plan::PlannedSeam* seam : segments_of(plan, joint)) sum += seam->*value;
  return sum;
}

inline std::size_t told(const Plan& plan, const std::string& words) {
  const std::vector<std::string> texts = texts_of(plan, "plan.segments");
  return static_cast<std::size_t>(std::count_if(texts.begin(), texts.end(), [&](const auto& text) {
    return text.find(words) != std::string::npos;
  }));
}

}  // namespace seamturn::tests
