/**
 * The window: JavaFX views over the job and the presenters that hold their state.
 *
 * <p>Lives here: the only home of JavaFX and of jMonkeyEngine's math. May not: arithmetic of its
 * own, printing. Imports all but {@code cli}.
 */
package org.seamwright.window;
