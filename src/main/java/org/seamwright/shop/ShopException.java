package org.seamwright.shop;

import org.seamwright.basis.InputException;

/** A shop book, or an entry for it, that is refused. */
public final class ShopException extends InputException {
  private static final long serialVersionUID = 1L;

  /** Makes a refusal; see {@link InputException}. */
  public ShopException(String source, String place, String problem, String remedy) {
    super(source, place, problem, remedy);
  }

  /** The same with its cause. */
  public ShopException(
      String source, String place, String problem, String remedy, Throwable cause) {
    super(source, place, problem, remedy, cause);
  }
}
