#pragma once
// Polygons of Boost.Geometry, by which those of the program are checked. mm.

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

namespace kw::tests {

using BoostPoint = boost::geometry::model::d2::point_xy<double>;
using BoostPolygon = boost::geometry::model::polygon<BoostPoint, false>;
using BoostRegion = boost::geometry::model::multi_polygon<BoostPolygon>;

inline BoostPolygon boost_rect(double left, double bottom, double right, double top) {
    BoostPolygon out;
    for (const auto& [x, y] :
         {std::pair{left, bottom}, {right, bottom}, {right, top}, {left, top}, {left, bottom}})
        boost::geometry::append(out.outer(), BoostPoint(x, y));
    return out;
}

}  // namespace kw::tests
