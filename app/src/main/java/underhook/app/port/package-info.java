/**
 * What the use cases need from outside: readers of jobs, plans and rasters, reference systems, writers
 * of outputs. Adapters implement these and know nothing of each other.
 */
@NullMarked
package underhook.app.port;

import org.jspecify.annotations.NullMarked;
