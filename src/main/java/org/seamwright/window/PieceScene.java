package org.seamwright.window;

import java.util.List;
import javafx.geometry.Point3D;
import javafx.scene.AmbientLight;
import javafx.scene.DirectionalLight;
import javafx.scene.Group;
import javafx.scene.PerspectiveCamera;
import javafx.scene.SceneAntialiasing;
import javafx.scene.SubScene;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.paint.PhongMaterial;
import javafx.scene.shape.CullFace;
import javafx.scene.shape.DrawMode;
import javafx.scene.shape.MeshView;
import javafx.scene.shape.TriangleMesh;
import javafx.scene.shape.VertexFormat;
import javafx.scene.transform.Affine;

/**
 * The piece drawn: a mesh for each chunk, replaced when what is shown of it changes, a small
 * picture of colours, a camera and lights that go with it.
 *
 * <p>All three corners of a face take the same point of the picture, in the middle of a square of
 * pixels, so that neither filtering nor smaller copies of the picture mix neighbours.
 */
final class PieceScene {
  /** Pixels along the side of the square of one class. */
  private static final int SQUARE = 4;

  /** Classes along the side of the picture of colours: room for 2000 sections of four classes. */
  private static final int SIDE = 92;

  private static final float[] TEXELS = texels();

  private final Group root = new Group();
  private final SubScene subScene = new SubScene(root, 1, 1, true, SceneAntialiasing.BALANCED);
  private final PerspectiveCamera camera = new PerspectiveCamera(true);
  private final Affine viewer = new Affine();
  private final Affine viewerTurn = new Affine();
  private final PhongMaterial material = new PhongMaterial(Color.WHITE);
  private final MeshView[] chunks;
  private final MeshView lines = new MeshView();

  PieceScene(PieceModel model) {
    chunks = new MeshView[model.chunks()];
    for (int i = 0; i < chunks.length; i++) {
      MeshView view = new MeshView();
      view.setMaterial(material);
      view.setDrawMode(DrawMode.FILL);
      // Through the holes of an open piece its inside must be seen.
      view.setCullFace(model.isClosed() ? CullFace.BACK : CullFace.NONE);
      // The library would try every face at each move of the mouse; rays go through our own tree.
      view.setMouseTransparent(true);
      chunks[i] = view;
      root.getChildren().add(view);
    }
    lines.setMaterial(new PhongMaterial(Color.rgb(0x2B, 0x33, 0x3B)));
    lines.setCullFace(CullFace.NONE);
    lines.setMouseTransparent(true);
    root.getChildren().add(lines);
    camera.setVerticalFieldOfView(true);
    camera.setFieldOfView(OrbitCamera.FIELD_OF_VIEW_DEGREES);
    camera.getTransforms().add(viewer);
    subScene.setCamera(camera);
    subScene.setManaged(false);
    subScene.setFill(Color.TRANSPARENT);
    subScene.setMouseTransparent(true);
    root.getChildren().add(lights());
  }

  /** Replaces what is shown of some chunks. */
  void show(int[] index, List<MeshChunk> now) {
    for (int i = 0; i < index.length; i++) {
      MeshChunk chunk = now.get(i);
      chunks[index[i]].setMesh(chunk.isEmpty() ? null : mesh(chunk));
    }
  }

  /** Replaces the lines on the surface. */
  void show(EdgeLines now) {
    if (now.isEmpty()) {
      lines.setMesh(null);
      return;
    }
    TriangleMesh mesh = new TriangleMesh(VertexFormat.POINT_NORMAL_TEXCOORD);
    mesh.getPoints().setAll(now.points());
    // One normal for all, towards nothing in particular: the colour is near black in any light.
    mesh.getNormals().setAll(0, 0, 1);
    mesh.getTexCoords().setAll(0, 0);
    mesh.getFaces().setAll(now.faces());
    lines.setMesh(mesh);
  }

  private Group lights() {
    AmbientLight sky = new AmbientLight(Color.gray(0.40));
    // Directions are those the light travels, in the camera's axes: right, down, ahead.
    DirectionalLight key = light(Color.color(0.55, 0.54, 0.52), 0.4, 0.48, 0.9);
    DirectionalLight fill = light(Color.color(0.19, 0.20, 0.22), -0.8, 0.1, 0.6);
    DirectionalLight rim = light(Color.gray(0.10), 0.1, -0.9, 0.4);
    Group lamps = new Group(key, fill, rim);
    lamps.getTransforms().add(viewerTurn);
    return new Group(sky, lamps);
  }

  private static DirectionalLight light(Color color, double x, double y, double z) {
    DirectionalLight light = new DirectionalLight(color);
    light.setDirection(new Point3D(x, y, z));
    return light;
  }

  private static TriangleMesh mesh(MeshChunk chunk) {
    TriangleMesh mesh = new TriangleMesh(VertexFormat.POINT_NORMAL_TEXCOORD);
    mesh.getPoints().setAll(chunk.points());
    mesh.getNormals().setAll(chunk.normals());
    mesh.getTexCoords().setAll(TEXELS);
    mesh.getFaces().setAll(chunk.faces());
    return mesh;
  }

  private static float[] texels() {
    float[] texel = new float[2 * SIDE * SIDE];
    for (int c = 0; c < SIDE * SIDE; c++) {
      int row = c / SIDE;
      texel[2 * c] = (c - row * SIDE + 0.5f) / SIDE;
      texel[2 * c + 1] = (row + 0.5f) / SIDE;
    }
    return texel;
  }

  /** The node to put into a window. */
  SubScene node() {
    return subScene;
  }

  /**
   * Gives every class its colour, 0xRRGGBB.
   *
   * @param shine strength of highlights, 0 to 1
   */
  void paint(int[] colours, double shine) {
    int width = SIDE * SQUARE;
    int[] argb = new int[width * width];
    for (int y = 0; y < width; y++) {
      for (int x = 0; x < width; x++) {
        int c = y / SQUARE * SIDE + x / SQUARE;
        argb[y * width + x] = 0xFF000000 | (c < colours.length ? colours[c] : 0);
      }
    }
    WritableImage picture = new WritableImage(width, width);
    picture
        .getPixelWriter()
        .setPixels(0, 0, width, width, PixelFormat.getIntArgbInstance(), argb, 0, width);
    material.setDiffuseMap(picture);
    material.setSpecularColor(Color.color(shine, 0.94 * shine, 0.8 * shine));
    material.setSpecularPower(28);
  }

  /** Draws from a viewer's place. */
  void look(OrbitCamera from) {
    double[] m = from.cameraMatrix();
    viewer.setToTransform(m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8], m[9], m[10], m[11]);
    viewerTurn.setToTransform(m[0], m[1], m[2], 0, m[4], m[5], m[6], 0, m[8], m[9], m[10], 0);
    camera.setNearClip(from.nearClipMm());
    camera.setFarClip(from.farClipMm());
  }
}
