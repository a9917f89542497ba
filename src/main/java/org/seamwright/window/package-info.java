/**
 * The window: JavaFX views over the job and the presenters that hold their state.
 *
 * <p>Presenters ({@code JobPresenter}, {@code PiecePresenter} and what they hold) know no toolkit,
 * change on the user interface's thread and are tested without a display; views ({@code …View},
 * {@code …Card}, {@code PieceScene}, {@code PieceTools}, {@code WindowFrame}) watch their {@code
 * Watched} values and call their methods. One {@code OrbitCamera} gives the picture's camera and
 * the ray under the pointer. Texts stand in {@code messages.properties}, looks in {@code
 * window.css}.
 *
 * <p>Lives here: the only home of JavaFX and of jMonkeyEngine's math. May not: arithmetic of its
 * own, printing. Imports all but {@code cli}.
 */
package org.seamwright.window;
