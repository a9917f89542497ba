package org.seamwright.region;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The points and directions of a mark by the names of their keys. */
final class MarkVectors implements Mark.Cases<Map<String, Vector3D>, RuntimeException> {
  @Override
  public Map<String, Vector3D> halfSpace(Mark.HalfSpace mark) {
    return Map.of("point", mark.point());
  }

  @Override
  public Map<String, Vector3D> near(Mark.Near mark) {
    return path(mark.path());
  }

  @Override
  public Map<String, Vector3D> creaseFill(Mark.CreaseFill mark) {
    return Map.of("point", mark.point());
  }

  @Override
  public Map<String, Vector3D> wholePart(Mark.WholePart mark) {
    return Map.of("point", mark.point());
  }

  @Override
  public Map<String, Vector3D> sector(Mark.Sector mark) {
    return Map.of("point", mark.point(), "zero", mark.zero());
  }

  @Override
  public Map<String, Vector3D> inBox(Mark.InBox mark) {
    return Map.of("low", mark.low(), "high", mark.high());
  }

  @Override
  public Map<String, Vector3D> ring(Mark.Ring mark) {
    return Map.of("point", mark.point());
  }

  @Override
  public Map<String, Vector3D> outline(Mark.Outline mark) {
    Map<String, Vector3D> vectors = path(mark.path());
    vectors.put("inside", mark.inside());
    return vectors;
  }

  @Override
  public Map<String, Vector3D> facing(Mark.Facing mark) {
    return Map.of();
  }

  @Override
  public Map<String, Vector3D> named(Mark.Named mark) {
    return Map.of();
  }

  @Override
  public Map<String, Vector3D> inside(Mark.Inside mark) {
    return Map.of("move", mark.body().move());
  }

  @Override
  public Map<String, Vector3D> outOfReach(Mark.OutOfReach mark) {
    return Map.of();
  }

  @Override
  public Map<String, Vector3D> innerShells(Mark.InnerShells mark) {
    return Map.of();
  }

  @Override
  public Map<String, Vector3D> grow(Mark.Grow mark) {
    return Map.of();
  }

  @Override
  public Map<String, Vector3D> smooth(Mark.Smooth mark) {
    return Map.of();
  }

  @Override
  public Map<String, Vector3D> mirror(Mark.Mirror mark) {
    return Map.of("point", mark.point());
  }

  @Override
  public Map<String, Vector3D> turn(Mark.Turn mark) {
    return Map.of("point", mark.point());
  }

  @Override
  public Map<String, Vector3D> invert(Mark.Invert mark) {
    return Map.of();
  }

  private static Map<String, Vector3D> path(List<Vector3D> points) {
    Map<String, Vector3D> vectors = new LinkedHashMap<>();
    for (int i = 0; i < points.size(); i++) {
      vectors.put("path[" + i + "]", points.get(i));
    }
    return vectors;
  }
}
