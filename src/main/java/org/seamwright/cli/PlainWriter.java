package org.seamwright.cli;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;

/**
 * Writes for a terminal that may not know every sign: what its character set lacks is spelled in
 * ASCII, so that "0.5 µm" never comes out as "0.5 ?m".
 */
final class PlainWriter extends FilterWriter {
  private final CharsetEncoder encoder;

  private PlainWriter(Writer out, CharsetEncoder encoder) {
    super(out);
    this.encoder = encoder;
  }

  static PrintWriter on(OutputStream stream, Charset charset) {
    Writer encoding = new OutputStreamWriter(stream, charset);
    return new PrintWriter(new PlainWriter(encoding, charset.newEncoder()), true);
  }

  @Override
  public void write(int sign) throws IOException {
    char c = (char) sign;
    if (Character.isSurrogate(c) || encoder.canEncode(c)) {
      out.write(c);
    } else {
      out.write(ascii(c));
    }
  }

  @Override
  public void write(char[] signs, int from, int count) throws IOException {
    for (int i = from; i < from + count; i++) {
      write(signs[i]);
    }
  }

  @Override
  public void write(String text, int from, int count) throws IOException {
    for (int i = from; i < from + count; i++) {
      write(text.charAt(i));
    }
  }

  private static String ascii(char c) {
    return switch (c) {
      case '²' -> "2";
      case '³' -> "3";
      case 'µ', 'μ' -> "u";
      case '×' -> "x";
      case '·' -> ".";
      case '–', '−' -> "-";
      case '±' -> "+-";
      case '\u00a0', '\u202f' -> " ";
      default -> "?";
    };
  }
}
