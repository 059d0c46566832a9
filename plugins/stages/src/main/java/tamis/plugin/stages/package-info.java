/**
 * Stages of work: whether readings lie in their window, when they will, and what brings them back.
 */
@NullMarked
package tamis.plugin.stages;

import org.jspecify.annotations.NullMarked;
