#include "whole/hand_plan.h"

namespace whole {

checker::Json hand_job() {
    return checker::Json::parse(R"({
      "format": "kerfwright-job", "version": 1, "name": "by hand", "unit": "mm",
      "fit": { "clearance": "0.1", "end_relief": "0,4", "groove_clearance": 0.25, "bottom_slack": "0.8 mm", "step": 0.5 },
      "stock": [ { "name": "ply 12", "thickness": "1.2 cm", "kind": "plywood" },
                 { "name": "ply 6", "thickness": "6 - 0.4", "kind": "plywood" } ],
      "machines": [ { "name": "saw", "kind": "table saw", "max_dado_width": "13/16 in", "max_height": "3 in" },
                    { "name": "chop", "kind": "miter saw" } ],
      "cutters": [ { "name": "quarter stack", "kind": "dado stack", "machine": "saw", "kerf": "1/4 in" },
                   { "name": "ripping blade", "kind": "blade", "machine": "saw", "kerf": "1/8 in" } ],
      "drawers": [
        { "name": "till", "count": 1, "box": { "width": 300, "height": 100, "depth": 250 },
          "front": { "stock": "ply 12", "joint": "locking rabbet" },
          "sides": { "stock": "ply 12" },
          "back": { "stock": "ply 12", "joint": "dado", "setback": 25 },
          "bottom": { "stock": "ply 6", "joint": "groove", "offset": 10, "depth": 4, "style": "slide in" } } ]
    })");
}

// Dado 6.35 wide. Height h = 12 - 6.35 + 0.1 = 5.75. Fence h + 0.5 = 6.25. Spacer 6.35 + 0.4 + 0.5 = 7.25, so the tongue is
// 6.25 + 6.35 - 7.25 = 5.35 = 5.75 - 0.4 long. Front and back 300 - 24 + 2 * 5.35 = 286.7.
// Back's dado 12.1 wide from 25, in two passes: 25 and 25 + 12.1 - 6.35 = 30.75. Groove 5.85 wide from 10, 4 deep, in two passes of
// 3.175: 10 and 12.675. Back 100 - 15.85 = 84.15 wide. Bottom across 300 - 24 + 8 - 0.8 = 283.2; from the floor of the front's
// groove at 0.5 + 12 - 4 = 8.5 to the back's face at 250 - 25, less 0.8: 215.7.
checker::Json hand_plan() {
    return checker::Json::parse(R"({
      "format": "kerfwright-plan", "version": 1, "job": "by hand",
      "boxes": [ { "drawer": "till", "width_mm": 300, "height_mm": 100, "depth_mm": 250 } ],
      "parts": [
        { "id": "L", "drawer": "till", "copy": 1, "role": "side_left", "length_mm": 250, "width_mm": 100, "thickness_mm": 12, "stock": "ply 12" },
        { "id": "R", "drawer": "till", "copy": 1, "role": "side_right", "length_mm": 250, "width_mm": 100, "thickness_mm": 12, "stock": "ply 12" },
        { "id": "F", "drawer": "till", "copy": 1, "role": "front", "length_mm": 286.7, "width_mm": 100, "thickness_mm": 12, "stock": "ply 12" },
        { "id": "K", "drawer": "till", "copy": 1, "role": "back", "length_mm": 286.7, "width_mm": 84.15, "thickness_mm": 12, "stock": "ply 12" },
        { "id": "B", "drawer": "till", "copy": 1, "role": "bottom", "length_mm": 283.2, "width_mm": 215.7, "thickness_mm": 5.6, "stock": "ply 6" } ],
      "setups": [
        { "id": "rip 100", "group": "g1", "work": "rip", "machine": "saw", "cutter": "ripping blade", "kerf_mm": 3.175, "fence_mm": 100,
          "height_mm": null, "spacer_mm": 0, "sacrificial": false, "guide": "rip fence", "test_cut": false,
          "passes": [ { "part": "L", "reference": "bottom edge", "down": "inside", "nibble": false },
                      { "part": "R", "reference": "bottom edge", "down": "inside", "nibble": false },
                      { "part": "F", "reference": "bottom edge", "down": "inside", "nibble": false } ] },
        { "id": "crosscut 250", "group": "g2", "work": "crosscut", "machine": "chop", "cutter": "", "kerf_mm": null, "fence_mm": 250,
          "height_mm": null, "spacer_mm": 0, "sacrificial": false, "guide": "stop", "test_cut": false,
          "passes": [ { "part": "L", "reference": "front end", "down": "inside", "nibble": false },
                      { "part": "R", "reference": "front end", "down": "inside", "nibble": false } ] },
        { "id": "dado", "group": "lock", "work": "locking rabbet: side dado", "machine": "saw", "cutter": "quarter stack", "kerf_mm": 6.35,
          "fence_mm": 6.25, "height_mm": 5.75, "spacer_mm": 0, "sacrificial": false, "guide": "miter gauge", "test_cut": true,
          "passes": [ { "part": "L", "reference": "front end", "down": "inside", "nibble": false },
                      { "part": "R", "reference": "front end", "down": "inside", "nibble": false } ] },
        { "id": "crosscut 286.7", "group": "g3", "work": "crosscut", "machine": "chop", "cutter": "", "kerf_mm": null, "fence_mm": 286.7,
          "height_mm": null, "spacer_mm": 0, "sacrificial": false, "guide": "stop", "test_cut": false,
          "passes": [ { "part": "F", "reference": "left end", "down": "inside", "nibble": false },
                      { "part": "K", "reference": "left end", "down": "inside", "nibble": false } ] },
        { "id": "rabbet", "group": "lock", "work": "locking rabbet: front rabbet", "machine": "saw", "cutter": "quarter stack", "kerf_mm": 6.35,
          "fence_mm": 6.25, "height_mm": 5.75, "spacer_mm": 7.25, "sacrificial": true, "guide": "miter gauge", "test_cut": true,
          "passes": [ { "part": "F", "reference": "left end", "down": "outside", "nibble": false },
                      { "part": "F", "reference": "right end", "down": "outside", "nibble": false } ] },
        { "id": "back near", "group": "g4", "work": "back dado", "machine": "saw", "cutter": "quarter stack", "kerf_mm": 6.35,
          "fence_mm": 25, "height_mm": 5.75, "spacer_mm": 0, "sacrificial": false, "guide": "miter gauge", "test_cut": true,
          "passes": [ { "part": "L", "reference": "rear end", "down": "inside", "nibble": false },
                      { "part": "R", "reference": "rear end", "down": "inside", "nibble": false } ] },
        { "id": "back far", "group": "g5", "work": "back dado", "machine": "saw", "cutter": "quarter stack", "kerf_mm": 6.35,
          "fence_mm": 30.75, "height_mm": 5.75, "spacer_mm": 0, "sacrificial": false, "guide": "miter gauge", "test_cut": true,
          "passes": [ { "part": "L", "reference": "rear end", "down": "inside", "nibble": false },
                      { "part": "R", "reference": "rear end", "down": "inside", "nibble": false } ] },
        { "id": "groove near", "group": "g6", "work": "groove", "machine": "saw", "cutter": "ripping blade", "kerf_mm": 3.175,
          "fence_mm": 10, "height_mm": 4, "spacer_mm": 0, "sacrificial": false, "guide": "rip fence", "test_cut": true,
          "passes": [ { "part": "L", "reference": "bottom edge", "down": "inside", "nibble": false },
                      { "part": "R", "reference": "bottom edge", "down": "inside", "nibble": false },
                      { "part": "F", "reference": "bottom edge", "down": "inside", "nibble": false } ] },
        { "id": "groove far", "group": "g7", "work": "groove", "machine": "saw", "cutter": "ripping blade", "kerf_mm": 3.175,
          "fence_mm": 12.675, "height_mm": 4, "spacer_mm": 0, "sacrificial": false, "guide": "rip fence", "test_cut": true,
          "passes": [ { "part": "L", "reference": "bottom edge", "down": "inside", "nibble": false },
                      { "part": "R", "reference": "bottom edge", "down": "inside", "nibble": false },
                      { "part": "F", "reference": "bottom edge", "down": "inside", "nibble": false } ] },
        { "id": "rip back", "group": "g8", "work": "rip", "machine": "saw", "cutter": "ripping blade", "kerf_mm": 3.175, "fence_mm": 84.15,
          "height_mm": null, "spacer_mm": 0, "sacrificial": false, "guide": "rip fence", "test_cut": false,
          "passes": [ { "part": "K", "reference": "top edge", "down": "inside", "nibble": false } ] },
        { "id": "rip bottom", "group": "g9", "work": "rip", "machine": "saw", "cutter": "ripping blade", "kerf_mm": 3.175, "fence_mm": 215.7,
          "height_mm": null, "spacer_mm": 0, "sacrificial": false, "guide": "rip fence", "test_cut": false,
          "passes": [ { "part": "B", "reference": "front end", "down": "inside", "nibble": false } ] },
        { "id": "crosscut bottom", "group": "g10", "work": "crosscut", "machine": "chop", "cutter": "", "kerf_mm": null, "fence_mm": 283.2,
          "height_mm": null, "spacer_mm": 0, "sacrificial": false, "guide": "stop", "test_cut": false,
          "passes": [ { "part": "B", "reference": "left end", "down": "inside", "nibble": false } ] } ],
      "sequence": [ "rip 100", "crosscut 250", "dado", "crosscut 286.7", "rabbet", "back near", "back far", "groove near", "groove far",
                    "rip back", "rip bottom", "crosscut bottom" ],
      "seconds": 3600, "lower_bound_seconds": 3000, "proved": false,
      "notes": [ { "level": "warning", "about": "dado", "text": "refit the guard before the next through cut" } ]
    })");
}

}  // namespace whole
