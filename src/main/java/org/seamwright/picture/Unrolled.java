package org.seamwright.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.seamwright.mesh.Faces;
import org.seamwright.mesh.Mesh;

/**
 * A turned piece rolled out flat, side by side: to the right the way round the axis, down the way
 * along the profile. Each row is as wide as the piece is round there, so that areas are true
 * everywhere, widths and heights too, and only angles suffer away from the middle (the sinusoidal
 * projection of maps, for any profile).
 *
 * <p>Every side is shown as one sees it who stands before it, up being along the axis. Not shown:
 * what isn't turned, such as the flanks of spokes and handles. Cost: {@link ProfileFit}, then
 * O(faces).
 *
 * <p>Reference: J. Snyder, "Map projections: a working manual", US Geological Survey (1987), 243.
 */
public final class Unrolled {
  /** Share of the piece's area that sides must show. Choice of this program. */
  private static final double ENOUGH = 0.5;

  /** Sides with less than this share of the area shown are left out. */
  private static final double LEAST = 2e-3;

  /** Radius of a number's circle over the width of a picture. Choice of this program. */
  private static final double LABEL_RADIUS = 0.014;

  private final List<Side> sides;
  private final double share;
  private final double[] shownMm2;

  private Unrolled(List<Side> sides, double share, double[] shownMm2) {
    this.sides = List.copyOf(sides);
    this.share = share;
    this.shownMm2 = shownMm2;
  }

  /** Where a side looks. */
  public enum Facing {
    /** Away from the axis. */
    OUTWARD,
    /** Towards the axis. */
    INWARD,
    /** Along the axis. */
    UP,
    /** Against the axis. */
    DOWN
  }

  /**
   * One side.
   *
   * @param facing where it looks
   * @param flat the side laid flat in x and y, mm, looked at from above
   * @param scene the same, dressed
   */
  public record Side(Facing facing, Mesh flat, Scene scene) {
    /** Width of its widest row, mm. */
    public double widthMm() {
      return flat.bounds().sizeX();
    }

    /** Way along the profile, mm. */
    public double heightMm() {
      return flat.bounds().sizeY();
    }

    /** Whether any numbered region is on it. */
    public boolean hasRegions() {
      for (int f = 0; f < flat.faceCount(); f++) {
        if (scene.region(f) > 0) {
          return true;
        }
      }
      return false;
    }

    /**
     * The side with numbers in its regions.
     *
     * @param pixelsPerMm scale
     * @param radius of the numbers' circles, pixels
     */
    public Pictures.Labelled picture(double pixelsPerMm, double radius) {
      return Pictures.flat(scene, pixelsPerMm, radius);
    }
  }

  /**
   * Rolls a piece out.
   *
   * @param scene the piece dressed, for example {@link Pictures#sectionScene}
   * @param point of the axis, mm
   * @param direction of the axis
   */
  public static Unrolled of(Scene scene, Vector3D point, Vector3D direction) {
    Turned turned = new Turned(scene.mesh(), point, direction);
    ProfileFit fit = new ProfileFit(turned);
    if (fit.chains().isEmpty()) {
      return new Unrolled(List.of(), 0, new double[0]);
    }
    List<Stretch> stretches = new ArrayList<>();
    for (int c = 0; c < fit.chains().size(); c++) {
      stretches.addAll(Stretch.of(fit.chains().get(c), c));
    }
    List<FlatFaces> flat = new ArrayList<>();
    for (Stretch s : stretches) {
      flat.add(new FlatFaces(turned, s, isDown(s)));
    }
    double shown = 0;
    double[] shownMm2 = new double[scene.regions()];
    ProfileIndex index = new ProfileIndex(fit.chains(), fit.toleranceMm);
    for (int f = 0; f < scene.mesh().faceCount(); f++) {
      int segment = fit.segment(f, index);
      if (segment >= 0) {
        double area = Faces.area(scene.mesh(), f);
        shown += area;
        shownMm2[scene.region(f)] += area;
        for (int i = 0; i < flat.size(); i++) {
          if (stretches.get(i).number() == index.chainOf(segment)) {
            double reach = fit.reach(f) + fit.toleranceMm;
            flat.get(i).add(f, index.inChain(segment), reach);
          }
        }
      }
    }
    List<Side> sides = new ArrayList<>();
    for (int i = 0; i < flat.size(); i++) {
      Mesh mesh = flat.get(i).mesh();
      if (mesh.faceCount() > 0 && area(mesh) >= LEAST * shown) {
        sides.add(new Side(facing(stretches.get(i)), mesh, scene.onto(mesh, flat.get(i).parent())));
      }
    }
    sides.sort(Comparator.comparing(Side::facing));
    return new Unrolled(sides, shown / fit.allMm2(), shownMm2);
  }

  private static boolean isDown(Stretch stretch) {
    return switch (facing(stretch)) {
      case OUTWARD, DOWN -> true;
      case INWARD, UP -> false;
    };
  }

  private static Facing facing(Stretch stretch) {
    double down = stretch.downMm2();
    double out = stretch.outMm2();
    if (Math.abs(down) >= Math.abs(out)) {
      return down > 0 ? Facing.OUTWARD : Facing.INWARD;
    }
    return out > 0 ? Facing.UP : Facing.DOWN;
  }

  private static double area(Mesh mesh) {
    double area = 0;
    for (int f = 0; f < mesh.faceCount(); f++) {
      area += Faces.area(mesh, f);
    }
    return area;
  }

  /** Whether so much of the piece is turned that sides show what it is. */
  public boolean isWorthShowing() {
    return share >= ENOUGH;
  }

  /** Sides that look outward first. */
  public List<Side> sides() {
    return sides;
  }

  /**
   * All sides that go round the axis and have numbered regions, one below the other, on white.
   *
   * @param width of the picture, pixels; its height follows
   * @return nothing if there is no such side
   */
  public Optional<Image> image(int width) {
    List<Side> shown =
        sides.stream()
            .filter(s -> s.facing() == Facing.OUTWARD || s.facing() == Facing.INWARD)
            .filter(Side::hasRegions)
            .toList();
    if (shown.isEmpty()) {
      return Optional.empty();
    }
    double radius = width * LABEL_RADIUS;
    double widest = shown.stream().mapToDouble(Side::widthMm).max().orElseThrow();
    double scale = (width - 2 * Math.ceil(Pictures.COLUMN * radius) - 1) / widest;
    List<Image> images = shown.stream().map(s -> s.picture(scale, radius).image()).toList();
    int height = images.stream().mapToInt(Image::height).sum();
    int[] argb = new int[width * height];
    int[] region = new int[argb.length];
    Arrays.fill(argb, 0xFFFFFFFF);
    Arrays.fill(region, Image.NOTHING);
    int top = 0;
    for (Image image : images) {
      for (int y = 0; y < image.height(); y++) {
        System.arraycopy(image.argb(), y * image.width(), argb, (top + y) * width, image.width());
        System.arraycopy(
            image.region(), y * image.width(), region, (top + y) * width, image.width());
      }
      top += image.height();
    }
    return Optional.of(new Image(width, height, argb, region));
  }

  /** Share of the piece's area on the sides, 0 to 1. */
  public double share() {
    return share;
  }

  /** Area of a region on the sides, mm². */
  public double shownMm2(int region) {
    return region < shownMm2.length ? shownMm2[region] : 0;
  }
}
