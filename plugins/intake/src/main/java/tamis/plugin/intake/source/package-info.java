/** Opens what a recipe comes in: text, JSON-LD, tables and pages of the web. */
@NullMarked
package tamis.plugin.intake.source;

import org.jspecify.annotations.NullMarked;
