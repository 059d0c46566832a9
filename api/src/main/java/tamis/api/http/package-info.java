/** The door: routes, what is answered there, and what is refused. */
@NullMarked
package tamis.api.http;

import org.jspecify.annotations.NullMarked;
