package org.seamwright.mend;

/** Why a repair can't be carried out, before it is known which step of which list it is. */
final class RepairRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final String remedy;

  RepairRefused(String problem, String remedy) {
    super(problem);
    this.remedy = remedy;
  }

  String remedy() {
    return remedy;
  }
}
