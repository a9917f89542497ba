// Figures of CGAL for open meshes: vertices, triangles, area, open edges, parts by shared edges.
//
// Usage: g++ -O2 figures_cgal.cpp -o figures_cgal -lgmp -lmpfr && ./figures_cgal FILE...
// (Debian: libcgal-dev.) Points are merged where their coordinates are equal; edges of three or more
// faces are parted by orient_polygon_soup before a surface is made, which opens them: the last figure
// says how many points that added.
#include <CGAL/Polygon_mesh_processing/connected_components.h>
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <CGAL/Polygon_mesh_processing/orient_polygon_soup.h>
#include <CGAL/Polygon_mesh_processing/polygon_soup_to_polygon_mesh.h>
#include <CGAL/Polygon_mesh_processing/repair_polygon_soup.h>
#include <CGAL/Polygon_mesh_processing/triangulate_faces.h>
#include <CGAL/Simple_cartesian.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/boost/graph/helpers.h>
#include <CGAL/IO/polygon_soup_io.h>
#include <cstdio>
#include <vector>

namespace PMP = CGAL::Polygon_mesh_processing;
typedef CGAL::Simple_cartesian<double> K;
typedef CGAL::Surface_mesh<K::Point_3> Mesh;

static void figures(const char *name) {
  std::vector<K::Point_3> points;
  std::vector<std::vector<std::size_t>> polygons;
  if (!CGAL::IO::read_polygon_soup(name, points, polygons)) {
    std::printf("%s not read\n", name);
    return;
  }
  PMP::merge_duplicate_points_in_polygon_soup(points, polygons);
  std::size_t collapsed = polygons.size();
  for (std::size_t i = polygons.size(); i-- > 0;) {
    auto &p = polygons[i];
    bool bad = false;
    for (std::size_t k = 0; k < p.size(); k++) bad |= p[k] == p[(k + 1) % p.size()];
    if (bad) polygons.erase(polygons.begin() + i);
  }
  collapsed -= polygons.size();
  PMP::remove_isolated_points_in_polygon_soup(points, polygons);
  std::size_t vertices = points.size();
  PMP::orient_polygon_soup(points, polygons);
  std::size_t added = points.size() - vertices;
  Mesh mesh;
  PMP::polygon_soup_to_polygon_mesh(points, polygons, mesh);
  PMP::triangulate_faces(mesh);
  std::size_t open = 0;
  for (auto h : mesh.halfedges()) open += mesh.is_border(h) ? 1 : 0;
  auto part = mesh.add_property_map<Mesh::Face_index, std::size_t>("f:part").first;
  std::size_t parts = PMP::connected_components(mesh, part);
  std::printf("%s %zu %zu %.10g %zu %zu +%zu\n", name, vertices, (std::size_t)mesh.number_of_faces() + collapsed,
              PMP::area(mesh), open, parts, added);
}

int main(int argc, char **argv) {
  for (int i = 1; i < argc; i++) figures(argv[i]);
}
