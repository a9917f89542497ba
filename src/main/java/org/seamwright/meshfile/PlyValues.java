package org.seamwright.meshfile;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Walks over the values of a PLY file, whichever way they are written. */
abstract sealed class PlyValues {
  private static final String COPY_AGAIN = "Copy or download the file again, or export it again.";

  final Refusal refusal;

  /** What is being read: "face 12". */
  private String element = "";

  private long number;

  private PlyValues(Refusal refusal) {
    this.refusal = refusal;
  }

  static PlyValues of(byte[] bytes, PlyHeader header, Refusal refusal) {
    return header.encoding() == PlyHeader.Encoding.ASCII
        ? new Text(bytes, header, refusal)
        : new Binary(bytes, header, refusal);
  }

  /** The next value. */
  abstract double value(PlyHeader.Type type) throws MeshFileException;

  /** Passes over some values. */
  abstract void skip(PlyHeader.Type type, long count) throws MeshFileException;

  /** Refuses an element whose announced count can't fit what is left of the file. */
  abstract void requireRoom(PlyHeader.Element element) throws MeshFileException;

  /** Byte of the next value. */
  abstract int position();

  /** Bytes other than spaces that are left. */
  abstract long left();

  /** Where the last value was. */
  abstract String where();

  /** Says which element comes now, counted from 0. */
  void begin(String name, long index) {
    element = name;
    number = index;
  }

  /** The element that comes now, without its line, which takes time to count. */
  String element() {
    return Refusal.shorten(element) + " " + number;
  }

  String place() {
    return element.isEmpty() ? where() : Refusal.shorten(element) + " " + number + ", " + where();
  }

  /** The next value as a whole number. */
  long whole(PlyHeader.Type type) throws MeshFileException {
    double value = value(type);
    if (value != Math.rint(value) || !(Math.abs(value) <= 1L << 32)) {
      throw refusal.at(
          place(), shown(value) + " is not a whole number, but one is due", Refusal.EXPORT_AGAIN);
    }
    return (long) value;
  }

  /** The next value as the length of a list. */
  long length(PlyHeader.Property list) throws MeshFileException {
    long length = whole(list.count());
    if (length < 0) {
      throw refusal.at(place(), "a list has " + length + " items", Refusal.EXPORT_AGAIN);
    }
    return length;
  }

  static String shown(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  MeshFileException cutOff(String detail) {
    return refusal.at(place(), "the PLY is cut off" + detail, COPY_AGAIN);
  }

  /** Values as words. */
  private static final class Text extends PlyValues {
    private final TextCursor cursor;
    private final byte[] bytes;
    private final int linesBefore;

    Text(byte[] bytes, PlyHeader header, Refusal refusal) {
      super(refusal);
      this.cursor = new TextCursor(bytes, header.end());
      this.bytes = bytes;
      this.linesBefore = header.lines();
    }

    @Override
    double value(PlyHeader.Type type) throws MeshFileException {
      next();
      double value = cursor.number();
      if (Double.isNaN(value)) {
        throw refusal.number(place(), cursor.word());
      }
      return value;
    }

    @Override
    void skip(PlyHeader.Type type, long count) throws MeshFileException {
      for (long i = 0; i < count; i++) {
        next();
      }
    }

    private void next() throws MeshFileException {
      if (!cursor.nextWord()) {
        throw cutOff(": the text ends where a value is due");
      }
    }

    @Override
    void requireRoom(PlyHeader.Element element) throws MeshFileException {
      // A value takes a character and a space.
      if (element.count() > 0
          && element.properties().size() > (bytes.length - position() + 1L) / 2 / element.count()) {
        throw cutOff(announced(element, bytes.length - (long) position()));
      }
    }

    @Override
    int position() {
      return cursor.position();
    }

    @Override
    long left() {
      return cursor.nextWord() ? bytes.length - cursor.position() + (long) cursor.length() : 0;
    }

    @Override
    String where() {
      return "line " + (linesBefore + cursor.line());
    }
  }

  static String announced(PlyHeader.Element element, long left) {
    return String.format(
        java.util.Locale.ROOT,
        ": it announces %,d of the element %s, which %,d more bytes can't hold",
        element.count(),
        Refusal.shorten(element.name()),
        left);
  }

  /** Values as bytes. */
  private static final class Binary extends PlyValues {
    private final ByteBuffer buffer;

    Binary(byte[] bytes, PlyHeader header, Refusal refusal) {
      super(refusal);
      this.buffer =
          ByteBuffer.wrap(bytes)
              .order(
                  header.encoding() == PlyHeader.Encoding.LITTLE
                      ? ByteOrder.LITTLE_ENDIAN
                      : ByteOrder.BIG_ENDIAN)
              .position(header.end());
    }

    @Override
    double value(PlyHeader.Type type) throws MeshFileException {
      if (buffer.remaining() < type.bytes()) {
        throw cutOff(": the file ends within a value");
      }
      return switch (type) {
        case INT8 -> buffer.get();
        case UINT8 -> Byte.toUnsignedInt(buffer.get());
        case INT16 -> buffer.getShort();
        case UINT16 -> Short.toUnsignedInt(buffer.getShort());
        case INT32 -> buffer.getInt();
        case UINT32 -> Integer.toUnsignedLong(buffer.getInt());
        case FLOAT32 -> buffer.getFloat();
        case FLOAT64 -> buffer.getDouble();
      };
    }

    @Override
    void skip(PlyHeader.Type type, long count) throws MeshFileException {
      if (count > buffer.remaining() / type.bytes()) {
        throw cutOff(": the file ends within a list of " + count + " values");
      }
      buffer.position((int) (buffer.position() + count * type.bytes()));
    }

    @Override
    void requireRoom(PlyHeader.Element element) throws MeshFileException {
      if (element.count() > 0 && element.leastBytes() > buffer.remaining() / element.count()) {
        throw cutOff(announced(element, buffer.remaining()));
      }
    }

    @Override
    int position() {
      return buffer.position();
    }

    @Override
    long left() {
      for (int i = buffer.position(); i < buffer.limit(); i++) {
        if (!TextCursor.isSpace(buffer.get(i)) && buffer.get(i) != 0) {
          return buffer.remaining();
        }
      }
      return 0;
    }

    @Override
    String where() {
      return "byte " + buffer.position();
    }
  }
}
