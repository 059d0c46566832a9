/**
 * A collection of recipes on disk: read file by file, written as formulas, with what stays open.
 */
@NullMarked
package tamis.api.collection;

import org.jspecify.annotations.NullMarked;
