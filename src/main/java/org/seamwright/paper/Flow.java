package org.seamwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Blocks set one below the other, none split over pages, so that what comes last on a page of its
 * own is never a line or two: first the gaps between blocks are narrowed a little, and if that
 * doesn't bring the rest back, blocks before it go with it.
 */
final class Flow {
  /** Fewest blocks on the last of several pages. */
  private static final int FEWEST = 3;

  /** Least height on the last of several pages, points. */
  private static final double LEAST = 110;

  /** How far gaps may be narrowed, and in which steps. */
  private static final double[] TIGHTNESS = {1, 0.8, 0.6, 0.45};

  private final Sheet sheet;
  private final List<Block> blocks = new ArrayList<>();

  /** Sets something from {@link Sheet#y} down; where it ends is the flow's business. */
  @FunctionalInterface
  interface Setting {
    void set() throws IOException;
  }

  /**
   * A block.
   *
   * @param height what it takes, points
   * @param gap room after it, points
   * @param setting sets it
   */
  private record Block(double height, double gap, Setting setting) {}

  Flow(Sheet sheet) {
    this.sheet = sheet;
  }

  /** Adds a block. */
  void add(double height, double gap, Setting setting) {
    blocks.add(new Block(height, gap, setting));
  }

  /** Sets all blocks. */
  void set() throws IOException {
    double tightness = 1;
    int breakBefore = -1;
    for (double t : TIGHTNESS) {
      int last = lastPage(t);
      if (last == 0 || isEnough(last, t)) {
        tightness = t;
        breakBefore = -1;
        break;
      }
      breakBefore = breakBefore < 0 ? earlier(last) : breakBefore;
    }
    for (int i = 0; i < blocks.size(); i++) {
      Block block = blocks.get(i);
      if (i == breakBefore) {
        sheet.newPage();
      }
      sheet.need(block.height);
      double top = sheet.y;
      block.setting.set();
      sheet.y = top + block.height + block.gap * tightness;
    }
  }

  /** The block that begins the last page; 0 if no page is turned. */
  private int lastPage(double tightness) {
    double y = sheet.y;
    int first = 0;
    for (int i = 0; i < blocks.size(); i++) {
      Block block = blocks.get(i);
      if (y + block.height > sheet.bottom() && y > sheet.top()) {
        y = sheet.top();
        first = i;
      }
      y += block.height + block.gap * tightness;
    }
    return first;
  }

  private boolean isEnough(int first, double tightness) {
    return blocks.size() - first >= FEWEST && height(first, tightness) >= LEAST;
  }

  private double height(int first, double tightness) {
    double height = 0;
    for (Block block : blocks.subList(first, blocks.size())) {
      height += block.height + block.gap * tightness;
    }
    return height;
  }

  private int earlier(int last) {
    int first = last;
    while (first > 1 && !isEnough(first, 1)) {
      first--;
    }
    return first;
  }
}
