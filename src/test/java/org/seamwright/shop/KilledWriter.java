package org.seamwright.shop;

import java.nio.file.Path;

/** Enters runs without end and says each number once it is confirmed; made to be killed. */
final class KilledWriter {
  private KilledWriter() {}

  public static void main(String[] args) throws Exception {
    try (ShopBook book = ShopBook.open(Path.of(args[0]))) {
      while (true) {
        System.out.println(book.add(ShopBookTest.run("cup", "gold-hard", 1)));
        System.out.flush();
      }
    }
  }
}
