/**
 * The job: the document a user edits, its file, and planning it end to end.
 *
 * <p>Lives here: the only home of Jackson data binding for jobs and plans. May not: drawing,
 * papers, the command line. Imports every package above it.
 */
package org.seamwright.job;
