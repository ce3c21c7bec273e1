#pragma once
// A picture and what it is told by.

#include <string>

#include "draw/drawing.h"

struct NamedDrawing {
    std::string name;
    kw::draw::Drawing drawing;
};
