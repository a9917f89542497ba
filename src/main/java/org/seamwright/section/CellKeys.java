package org.seamwright.section;

/**
 * Which cell each vertex belongs to, by keys that are linear inside faces: the least key wins, and
 * borders run where two are equal.
 */
interface CellKeys {
  /** No cell reaches the vertex. */
  int NONE = -1;

  /** The vertex lies on a line that borders keep to: it belongs to whatever is on either side. */
  int TIE = -2;

  /** Cell of a vertex, {@link #NONE} or {@link #TIE}. */
  int cell(int vertex);

  /** Key of a cell at a vertex, mm; for a cell that is not near, one that doesn't win. */
  double key(int vertex, int cell);

  /** Cell of a face all of whose corners are ties. */
  int tiedFace(int face);
}
