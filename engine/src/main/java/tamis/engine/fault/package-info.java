/** Why there is no answer: faults, each with its place, gathered and thrown together. */
@NullMarked
package tamis.engine.fault;

import org.jspecify.annotations.NullMarked;
