/** Where the program starts, and where its parts are wired. */
@NullMarked
package tamis.api;

import org.jspecify.annotations.NullMarked;
