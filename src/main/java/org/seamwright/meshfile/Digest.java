package org.seamwright.meshfile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Digests of files, by which a job knows its mesh again. */
final class Digest {
  private static final int STEP = 1 << 20;

  private Digest() {}

  /** SHA-256 (NIST FIPS 180-4) of all bytes, in hex. */
  static String sha256(ByteSource source) throws IOException {
    MessageDigest digest;
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("Every Java platform has SHA-256", impossible);
    }
    ByteBuffer buffer = ByteBuffer.allocate((int) Math.min(STEP, source.length()));
    for (long at = 0; at < source.length(); at += STEP) {
      source.read(buffer.clear().limit((int) Math.min(STEP, source.length() - at)), at);
      digest.update(buffer.flip());
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
