# cmake -DFILES=english.txt;german.txt -DOUT=header.h -P embed_words.cmake
set(text "// Made from src/words/ by cmake/embed_words.cmake.\n#pragma once\n#include <string_view>\nnamespace kw::tables {\n")
foreach(path IN LISTS FILES)
  get_filename_component(name ${path} NAME_WE)
  file(READ ${path} table)
  string(APPEND text "inline constexpr std::string_view ${name} = R\"table(${table})table\";\n")
endforeach()
string(APPEND text "}  // namespace kw::tables\n")
file(WRITE ${OUT} "${text}")
