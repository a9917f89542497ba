package org.seamwright.picture;

import java.util.Arrays;
import java.util.Objects;
import org.seamwright.mesh.Mesh;

/**
 * A piece dressed for pictures: what each face looks like and which region it belongs to. One scene
 * serves any number of views; the normals are worked out once.
 */
public final class Scene {
  private final Mesh mesh;
  private final byte[] finish;
  private final int[] region;
  private final byte[] lap;
  private final int[] tone;
  private final float[] normal;

  private Scene(Mesh mesh, byte[] finish, int[] region, byte[] lap, int[] tone, float[] normal) {
    this.mesh = mesh;
    this.finish = finish;
    this.region = region;
    this.lap = lap;
    this.tone = tone;
    this.normal = normal;
  }

  /**
   * A scene.
   *
   * @param mesh the piece
   * @param finish one entry per face: code of a {@link Finish}
   * @param region one entry per face, 0 or more: the number the id buffer holds; a line is drawn
   *     where two regions meet
   * @param lap one entry per face: 0 none, 1 flashed twice, 2 activated twice, 3 activated more
   * @param tone one entry per region number: its class of colour and pattern, 0 to 6
   * @throws IllegalArgumentException if the arrays don't fit
   */
  public static Scene of(Mesh mesh, byte[] finish, int[] region, byte[] lap, int[] tone) {
    int faces = mesh.faceCount();
    if (finish.length != faces || region.length != faces || lap.length != faces) {
      throw new IllegalArgumentException("Arrays of a scene don't fit its mesh");
    }
    for (int f = 0; f < faces; f++) {
      Objects.checkIndex(region[f], tone.length);
      Objects.checkIndex(lap[f], 4);
    }
    return new Scene(mesh, finish, region, lap, tone, CornerNormals.of(mesh));
  }

  /** A piece that looks the same all over. */
  public static Scene plain(Mesh mesh, Finish finish) {
    byte[] code = new byte[mesh.faceCount()];
    Arrays.fill(code, finish.code());
    return of(mesh, code, new int[code.length], new byte[code.length], new int[1]);
  }

  /** The same piece and regions with other looks. */
  public Scene withFinish(byte[] other) {
    if (other.length != finish.length) {
      throw new IllegalArgumentException("Arrays of a scene don't fit its mesh");
    }
    return new Scene(mesh, other, region, lap, tone, normal);
  }

  /**
   * The same looks on another mesh, which the parts of the faces were laid out as.
   *
   * @param other the mesh
   * @param parent one entry per face of it: the face of this scene that it is a part of
   */
  Scene onto(Mesh other, int[] parent) {
    byte[] otherFinish = new byte[parent.length];
    int[] otherRegion = new int[parent.length];
    byte[] otherLap = new byte[parent.length];
    for (int i = 0; i < parent.length; i++) {
      otherFinish[i] = finish[parent[i]];
      otherRegion[i] = region[parent[i]];
      otherLap[i] = lap[parent[i]];
    }
    return of(other, otherFinish, otherRegion, otherLap, tone);
  }

  /** One more than the highest number a region may have. */
  int regions() {
    return tone.length;
  }

  /** The piece. */
  public Mesh mesh() {
    return mesh;
  }

  Finish finish(int face) {
    return Finish.ofCode(finish[face]);
  }

  int region(int face) {
    return region[face];
  }

  int lap(int face) {
    return lap[face];
  }

  int tone(int face) {
    return tone[region[face]];
  }

  float[] normal() {
    return normal;
  }
}
