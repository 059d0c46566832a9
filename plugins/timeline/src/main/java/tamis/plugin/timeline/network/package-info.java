/**
 * The network of tasks, what it allows, and the search for the best order at what is scarce:
 * lengths and pools, nothing of formulas.
 */
@NullMarked
package tamis.plugin.timeline.network;

import org.jspecify.annotations.NullMarked;
