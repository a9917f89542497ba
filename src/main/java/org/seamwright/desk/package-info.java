/**
 * The desk: what the window knows of the job that is open, without a toolkit.
 *
 * <p>{@code Desk} holds the job, its history and its results; it reads, marks and plans away from
 * the user interface's thread, saves after each change and tells what it holds by {@code Watched}
 * values. Beside it stands one presenter for each place of the window: what is missing, units and
 * repairs of the piece, tools of marking, the plating form, papers. All are called on the user
 * interface's thread and tested without a display. Texts stand in {@code messages.properties}.
 *
 * <p>May not: know JavaFX or any display, print.
 */
package org.seamwright.desk;
