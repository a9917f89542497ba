package org.seamwright.picture;

/**
 * Colour of a place on the piece, lit by lamps that go with the camera so that every side is well
 * lit. Metals mirror a studio: dark floor, bright ceiling, a soft box at the upper left and a strip
 * at the right; all else is matt.
 *
 * <p>Directions are in the picture's axes: x right, y up, z towards the eye.
 *
 * <p>The gold starts from S. Lagarde, "Feeding a physically based shading model" (2011): linear RGB
 * reflectance about 1.0, 0.78, 0.34 (from memory), deepened as light between two gold surfaces is.
 * Gold swallows blue, so it must come out red over green over blue.
 */
final class Shader {
  private static final float[] GOLD = {1.0f, 0.68f, 0.235f};

  /**
   * A cool grey, so that it stays apart from gold for every kind of eye. Choice of this program.
   */
  private static final float[] BARE = {0.53f, 0.56f, 0.61f};

  /** From 0.95, 0.64, 0.54 of the same source (from memory), deepened like gold. */
  private static final float[] COPPER = {0.95f, 0.52f, 0.40f};

  /** 0.66, 0.61, 0.53 of the same source (from memory): a warm grey. */
  private static final float[] NICKEL = {0.66f, 0.61f, 0.53f};

  /** 0.97, 0.96, 0.91 of the same source (from memory). */
  private static final float[] SILVER = {0.97f, 0.96f, 0.91f};

  private static final float[] KEY = unit(-0.42f, 0.62f, 0.66f);
  private static final float[] STRIP = unit(0.93f, 0.10f, 0.30f);
  private static final int GHOST_RGB = 0xD3D7DC;
  private static final int TAPE_RGB = 0xFFFFFF;
  private static final int COVERED_RGB = 0xF3F0E7;
  private static final int COVERED_INK = 0x5E7389;

  /** How much darker pattern ink is than its ground. */
  private static final float INK = 0.70f;

  /** How much darker bands are that are flashed twice, activated twice, activated more often. */
  private static final float[] LAP = {1, 0.86f, 0.70f, 0.52f};

  private static final byte[] TO_SRGB = srgbTable();

  private final double pitch;
  private final int[] light = new int[Palette.SIZE];

  /**
   * A shader.
   *
   * @param pitch of the patterns, in samples
   */
  Shader(double pitch) {
    this.pitch = pitch;
    for (int tone = 0; tone < Palette.SIZE; tone++) {
      light[tone] = Palette.light(tone);
    }
  }

  private static float[] unit(float x, float y, float z) {
    float length = (float) Math.sqrt(x * x + y * y + z * z);
    return new float[] {x / length, y / length, z / length};
  }

  private static byte[] srgbTable() {
    byte[] table = new byte[4097];
    for (int i = 0; i < table.length; i++) {
      double c = i / 4096.0;
      // IEC 61966-2-1.
      double s = c <= 0.0031308 ? 12.92 * c : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
      table[i] = (byte) Math.round(255 * s);
    }
    return table;
  }

  /**
   * Colour of a sample, 0xRRGGBB.
   *
   * @param finish what the face looks like
   * @param tone class of its section
   * @param lap 0 to 3
   * @param nx normal
   * @param ny normal
   * @param nz normal, towards the eye
   * @param ex direction to the eye, unit
   * @param ey direction to the eye
   * @param ez direction to the eye
   * @param x sample
   * @param y sample
   */
  int shade(
      Finish finish,
      int tone,
      int lap,
      float nx,
      float ny,
      float nz,
      float ex,
      float ey,
      float ez,
      int x,
      int y) {
    return switch (finish) {
      case GOLD -> metal(GOLD, nx, ny, nz, ex, ey, ez);
      case BARE -> metal(BARE, nx, ny, nz, ex, ey, ez);
      case COPPER -> metal(COPPER, nx, ny, nz, ex, ey, ez);
      case NICKEL -> metal(NICKEL, nx, ny, nz, ex, ey, ez);
      case SILVER -> metal(SILVER, nx, ny, nz, ex, ey, ez);
      case GHOST -> matt(GHOST_RGB, 0.55f + 0.45f * lamp(nx, ny, nz));
      case TAPE -> matt(TAPE_RGB, lamp(nx, ny, nz) * LAP[lap]);
      case COVERED ->
          matt(
              Palette.inked(4, x / pitch, y / pitch) ? COVERED_INK : COVERED_RGB, lamp(nx, ny, nz));
      case SECTION -> {
        float ink = Palette.inked(tone, x / pitch, y / pitch) ? INK : 1;
        yield matt(light[tone], lamp(nx, ny, nz) * ink * LAP[lap]);
      }
    };
  }

  /** Reflectance of a metal, red, green and blue, linear; of gold for what is no metal. */
  static float[] reflectance(Finish metal) {
    return switch (metal) {
      case BARE -> BARE.clone();
      case COPPER -> COPPER.clone();
      case NICKEL -> NICKEL.clone();
      case SILVER -> SILVER.clone();
      case GOLD, SECTION, COVERED, GHOST, TAPE -> GOLD.clone();
    };
  }

  /** Brightness of a matt white surface, about 1 where it faces the key lamp. */
  private static float lamp(float nx, float ny, float nz) {
    float key = Math.max(0, nx * KEY[0] + ny * KEY[1] + nz * KEY[2]);
    return 0.68f + 0.20f * key + 0.16f * nz + 0.04f * ny;
  }

  private static int matt(int rgb, float brightness) {
    int r = Math.min(255, (int) ((rgb >> 16 & 255) * brightness + 0.5f));
    int g = Math.min(255, (int) ((rgb >> 8 & 255) * brightness + 0.5f));
    int b = Math.min(255, (int) ((rgb & 255) * brightness + 0.5f));
    return r << 16 | g << 8 | b;
  }

  private static int metal(
      float[] colour, float nx, float ny, float nz, float ex, float ey, float ez) {
    float facing = Math.max(0, nx * ex + ny * ey + nz * ez);
    float mirror = studio(2 * facing * nx - ex, 2 * facing * ny - ey, 2 * facing * nz - ez);
    float sheen = 0.22f * lamp(nx, ny, nz);
    float grazing = 1 - facing;
    float grazing2 = grazing * grazing;
    // Schlick's approximation, at part strength: a brushed deposit is no perfect mirror.
    float fresnel = 0.45f * grazing2 * grazing2 * grazing;
    int rgb = 0;
    for (int channel = 0; channel < 3; channel++) {
      float c = colour[channel];
      float value = (c + (1 - c) * fresnel) * mirror * 0.86f + c * sheen;
      float toned = value * 1.32f / (1 + 0.36f * value);
      int index = Math.min(4096, Math.max(0, (int) (toned * 4096)));
      rgb = (rgb << 8) | (TO_SRGB[index] & 255);
    }
    return rgb;
  }

  /** Light that comes from a direction of the studio. */
  private static float studio(float x, float y, float z) {
    float ceiling = smooth(-0.15f, 0.95f, y);
    float floor = smooth(0.0f, 0.75f, -y);
    float key = smooth(0.45f, 0.92f, x * KEY[0] + y * KEY[1] + z * KEY[2]);
    float strip = smooth(0.78f, 0.95f, x * STRIP[0] + y * STRIP[1] + z * STRIP[2]);
    float side = smooth(0.35f, 0.90f, -x);
    return 0.17f + 0.34f * ceiling + 0.30f * floor + 0.62f * key + 0.50f * strip + 0.28f * side;
  }

  private static float smooth(float from, float to, float t) {
    float s = Math.max(0, Math.min(1, (t - from) / (to - from)));
    return s * s * (3 - 2 * s);
  }
}
