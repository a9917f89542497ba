// As-rigid-as-possible layout of one open patch by CGAL, for the table in docs/templates.md.
// Usage: arap PATCH.off   prints faces, seconds, mean and largest stretch, flipped faces.
// Stretch of a face: the larger of its greatest singular value and the inverse of its least, less 1.
#include <CGAL/Simple_cartesian.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/Surface_mesh_parameterization/ARAP_parameterizer_3.h>
#include <CGAL/Surface_mesh_parameterization/parameterize.h>
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <fstream>

typedef CGAL::Simple_cartesian<double> Kernel;
typedef CGAL::Surface_mesh<Kernel::Point_3> Mesh;
typedef boost::graph_traits<Mesh>::halfedge_descriptor Halfedge;
typedef boost::graph_traits<Mesh>::vertex_descriptor Vertex;
namespace SMP = CGAL::Surface_mesh_parameterization;

int main(int, char** argv) {
  Mesh mesh;
  std::ifstream in(argv[1]);
  in >> mesh;
  Halfedge rim = CGAL::Polygon_mesh_processing::longest_border(mesh).first;
  auto uv = mesh.add_property_map<Vertex, Kernel::Point_2>("v:uv").first;
  auto from = std::chrono::steady_clock::now();
  auto code = SMP::parameterize(mesh, SMP::ARAP_parameterizer_3<Mesh>(), rim, uv);
  double seconds =
      std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
  double total = 0, mean = 0, largest = 0;
  int flipped = 0;
  for (auto f : mesh.faces()) {
    Halfedge h = mesh.halfedge(f);
    Vertex v[3] = {mesh.source(h), mesh.target(h), mesh.target(mesh.next(h))};
    auto a = mesh.point(v[1]) - mesh.point(v[0]), b = mesh.point(v[2]) - mesh.point(v[0]);
    double base = std::sqrt(a * a), x = (a * b) / base;
    double y = std::sqrt(std::max(0.0, b * b - x * x)), area = base * y / 2;
    double ux = uv[v[1]].x() - uv[v[0]].x(), uy = uv[v[1]].y() - uv[v[0]].y();
    double vx = uv[v[2]].x() - uv[v[0]].x(), vy = uv[v[2]].y() - uv[v[0]].y();
    double j0 = ux / base, j1 = (vx - ux * x / base) / y;
    double j2 = uy / base, j3 = (vy - uy * x / base) / y;
    double e = std::hypot(j0 + j3, j2 - j1) / 2, g = std::hypot(j0 - j3, j2 + j1) / 2;
    double stretch = e > g ? std::max(e + g, 1 / (e - g)) - 1 : 1e9;
    flipped += e > g ? 0 : 1;
    total += area;
    mean += area * stretch;
    largest = std::max(largest, stretch);
  }
  std::printf("%s code %d faces %zu seconds %.2f mean %.6f largest %.6f flipped %d\n", argv[1],
              (int)code, (size_t)mesh.number_of_faces(), seconds, mean / total, largest, flipped);
}
