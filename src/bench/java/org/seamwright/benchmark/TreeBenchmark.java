package org.seamwright.benchmark;

import com.jme3.bounding.BoundingBox;
import com.jme3.collision.CollisionResults;
import com.jme3.collision.bih.BIHTree;
import com.jme3.math.Matrix4f;
import com.jme3.math.Ray;
import com.jme3.math.Vector3f;
import com.jme3.scene.VertexBuffer;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.seamwright.mesh.FaceTree;
import org.seamwright.mesh.Mesh;

/** The spatial tree beside jMonkeyEngine's, on the torus of a million faces. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 3)
public class TreeBenchmark {
  private static final int PLACES = 1 << 17;

  private final Mesh mesh = Torus.of(1000, 500);
  private final double[] place = new double[3 * PLACES];
  private FaceTree tree;
  private BIHTree bih;
  private BoundingBox bound;
  private int at;

  /** Builds both trees; places lie within 1 mm of the surface, drawn with a fixed seed. */
  @Setup
  public void build() {
    Random random = new Random(7);
    for (int i = 0; i < PLACES; i++) {
      double[] p =
          Torus.near(
              2 * Math.PI * random.nextDouble(),
              2 * Math.PI * random.nextDouble(),
              2 * random.nextDouble() - 1);
      System.arraycopy(p, 0, place, 3 * i, 3);
    }
    tree = FaceTree.of(mesh);
    bih = bihOf(mesh);
    bound = new BoundingBox(new Vector3f(0, 0, 0), 300, 300, 100);
  }

  private static BIHTree bihOf(Mesh mesh) {
    com.jme3.scene.Mesh other = new com.jme3.scene.Mesh();
    float[] xyz = new float[mesh.xyz().length];
    for (int i = 0; i < xyz.length; i++) {
      xyz[i] = (float) mesh.xyz()[i];
    }
    other.setBuffer(VertexBuffer.Type.Position, 3, xyz);
    other.setBuffer(VertexBuffer.Type.Index, 3, mesh.corner());
    other.updateBound();
    BIHTree tree = new BIHTree(other);
    tree.construct();
    return tree;
  }

  private int next() {
    at = (at + 1) & (PLACES - 1);
    return 3 * at;
  }

  /** Nearest point of the surface. */
  @Benchmark
  public Object nearest() {
    int i = next();
    return tree.nearest(place[i], place[i + 1], place[i + 2]);
  }

  /** First face on a ray from outside, as in picking. */
  @Benchmark
  public Object ray() {
    int i = next();
    double x = place[i];
    double y = place[i + 1];
    double z = place[i + 2];
    return tree.firstHit(3 * x, 3 * y, 400, -2 * x, -2 * y, z - 400);
  }

  /** The same ray through jMonkeyEngine's tree. */
  @Benchmark
  public Object rayByBih() {
    int i = next();
    float x = (float) place[i];
    float y = (float) place[i + 1];
    float z = (float) place[i + 2];
    Ray ray = new Ray(new Vector3f(3 * x, 3 * y, 400), new Vector3f(-2 * x, -2 * y, z - 400));
    ray.getDirection().normalizeLocal();
    CollisionResults results = new CollisionResults();
    bih.collideWith(ray, Matrix4f.IDENTITY, bound, results);
    return results.getClosestCollision();
  }

  /** Building this project's tree. */
  @Benchmark
  @OutputTimeUnit(TimeUnit.MILLISECONDS)
  public Object buildTree() {
    return FaceTree.of(mesh);
  }

  /** Building jMonkeyEngine's tree, its copy of the mesh included. */
  @Benchmark
  @OutputTimeUnit(TimeUnit.MILLISECONDS)
  public Object buildBih() {
    return bihOf(mesh);
  }
}
