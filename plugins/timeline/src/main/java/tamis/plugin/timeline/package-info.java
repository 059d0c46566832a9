/** When each stage of one or several formulas starts, so that all is ready in time. */
@NullMarked
package tamis.plugin.timeline;

import org.jspecify.annotations.NullMarked;
