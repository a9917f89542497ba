package org.seamwright.measure;

import java.util.Locale;
import java.util.Random;
import org.seamwright.basis.Progress;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;
import org.seamwright.mesh.Topology;
import org.seamwright.testsupport.Shapes;

/** Surveys noisy spheres and tori of known area; {@code main} prints the accuracy page's table. */
final class NoiseCampaign {
  private NoiseCampaign() {}

  /** A mesh moved by noise along normals: those of the noiseless faces around. */
  static Mesh noisy(Mesh mesh, double height, boolean gaussian, long seed) {
    Random random = new Random(seed);
    double[] xyz = mesh.xyz().clone();
    double[] normals = new double[xyz.length];
    double[] normal = new double[3];
    for (int h = 0; h < mesh.corner().length; h++) {
      Faces.normal(mesh, h / 3, normal);
      for (int axis = 0; axis < 3; axis++) {
        normals[3 * mesh.corner()[h] + axis] += normal[axis];
      }
    }
    for (int v = 0; v < xyz.length; v += 3) {
      double length = Math.hypot(Math.hypot(normals[v], normals[v + 1]), normals[v + 2]);
      double by = height * (gaussian ? random.nextGaussian() : 2 * random.nextDouble() - 1);
      for (int axis = 0; axis < 3; axis++) {
        xyz[v + axis] += by * normals[v + axis] / length;
      }
    }
    return Mesh.of(xyz, mesh.corner());
  }

  static Survey survey(Mesh mesh) {
    return Surveyor.survey(mesh, Topology.of(mesh), 0, Progress.NONE);
  }

  /** Facets of about so long edges. */
  static Mesh lay(KnownSurface surface, double edgeMm, Meshing meshing, long seed) {
    int facets = (int) (surface.areaMm2() / (edgeMm * edgeMm / 2));
    return meshing.lay(surface, facets, new Random(seed));
  }

  /** Prints the table; the argument is the largest number of facets. */
  public static void main(String[] args) {
    int most = args.length > 0 ? Integer.parseInt(args[0]) : 500_000;
    long seed = 1;
    for (double radius : new double[] {30, 80, 200}) {
      for (KnownSurface surface :
          new KnownSurface[] {
            KnownSurface.sphere(radius), KnownSurface.torus(radius, radius / 3)
          }) {
        for (double edge : new double[] {0.5, 1, 3}) {
          if (surface.areaMm2() / (edge * edge / 2) > most) {
            continue;
          }
          for (Meshing meshing : new Meshing[] {Meshing.EVEN, Meshing.JITTERED}) {
            Mesh clean = lay(surface, edge, meshing, seed);
            for (double height : new double[] {0.02, 0.1, 0.5}) {
              for (boolean gaussian : new boolean[] {false, true}) {
                row(
                    surface,
                    radius,
                    meshing,
                    edge,
                    noisy(clean, height, gaussian, seed),
                    height,
                    gaussian,
                    seed);
                seed++;
              }
            }
          }
        }
      }
    }
  }

  private static void row(
      KnownSurface surface,
      double radius,
      Meshing meshing,
      double edge,
      Mesh mesh,
      double height,
      boolean gaussian,
      long seed) {
    Survey survey = survey(mesh);
    Survey.SmoothArea smooth = survey.smooth();
    double exact = surface.areaMm2();
    boolean held = smooth.lowMm2() <= exact && exact <= smooth.highMm2();
    System.out.printf(
        Locale.ROOT,
        "| %s | %.0f | %s | %.1f | %.2f %s | %d | %+.2f %% | %+.3f %% | %s | %s |%n",
        surface.name(),
        radius,
        meshing.name().toLowerCase(Locale.ROOT),
        edge,
        height,
        gaussian ? "Gaussian" : "uniform",
        seed,
        100 * (survey.areaMm2() / exact - 1),
        100 * (smooth.areaMm2() / exact - 1),
        smooth.noiseMm2() > 0 ? "yes" : "no",
        held ? "yes" : "no");
  }

  /** A square sheet with waves along x, height over the plane {@code k sin(2 pi x / length)}. */
  static Mesh waves(double size, int steps, double height, double length) {
    Mesh plane = Shapes.plane(size, size, steps, steps);
    double[] xyz = plane.xyz().clone();
    for (int v = 0; v < xyz.length; v += 3) {
      xyz[v + 2] = height * Math.sin(2 * Math.PI * xyz[v] / length);
    }
    return Mesh.of(xyz, plane.corner());
  }
}
