package org.seamwright.job;

import java.util.List;
import org.seamwright.basis.Notice;
import org.seamwright.region.SurfaceMap;

/**
 * A job whose marks have been carried out, and nothing more.
 *
 * @param job the decisions
 * @param piece what the marks were carried out on
 * @param map the piece cut along marks, and what each mark did
 * @param notices what reading, surveying and marking had to say
 */
public record MarkedJob(Job job, Piece piece, SurfaceMap map, List<Notice> notices) {
  /** Copies the list. */
  public MarkedJob {
    notices = List.copyOf(notices);
  }
}
