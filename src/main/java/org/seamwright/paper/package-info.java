/**
 * What is printed: bench sheet, customer sheet, CSV.
 *
 * <p>Lives here: the only home of PDFBox. May not: computing figures; they come from the plan.
 * Imports {@code job}, {@code picture}, {@code mask} and what those rest on.
 */
package org.seamwright.paper;
