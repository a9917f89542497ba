package org.seamwright.meshfile;

import java.nio.file.Path;

/**
 * Builds the refusals of one file, so that readers word the same trouble the same way.
 *
 * @param file the mesh file
 * @param packedBytes size of the file if its content was unpacked from it, else 0
 */
record Refusal(Path file, long packedBytes) {
  static final String EXPORT_AGAIN = "Export the model again from the program it came from.";

  Refusal(Path file) {
    this(file, 0);
  }

  MeshFileException at(String place, String problem, String remedy) {
    return new MeshFileException(file, place, problem, remedy);
  }

  /** A file without a single face. */
  MeshFileException noFaces() {
    return at("", "the file holds no faces", "Check that the exported model is not empty.");
  }

  /** A number that text can't be read as, told apart by what it looks like. */
  MeshFileException number(String place, String token) {
    String shown = shorten(token);
    String plain = token.toLowerCase(java.util.Locale.ROOT).replaceFirst("^[+-]", "");
    if (plain.startsWith("nan") || plain.startsWith("inf") || plain.contains("#")) {
      return notFinite(place, shown);
    }
    if (!Double.isNaN(Decimals.parse(token))) {
      return tooLarge(place, shown);
    }
    String remedy =
        token.indexOf(',') >= 0
            ? "Export the model again with a point as decimal mark."
            : "Mend the line or export the model again.";
    return at(place, "'" + shown + "' is not a number", remedy);
  }

  /** A coordinate that is NaN or infinite. */
  MeshFileException notFinite(String place, String shown) {
    return at(
        place,
        "the coordinate " + shown + " is not a finite number",
        "Remove or repair this face in the program the model came from and export again.");
  }

  /** A coordinate beyond the range of single precision. */
  MeshFileException tooLarge(String place, String shown) {
    return at(
        place,
        "the coordinate " + shown + " is larger than mesh files can hold (3.4e38)",
        "Check the unit of the model and export again.");
  }

  /** A token fit for a message: not too long, without control characters. */
  static String shorten(String token) {
    return shorten(token, 40);
  }

  /** A text fit for a message: of so many characters at most, without control characters. */
  static String shorten(String text, int most) {
    String part = text.length() <= most ? text : text.substring(0, most) + "…";
    return part.replaceAll("\\p{Cntrl}", "?");
  }
}
