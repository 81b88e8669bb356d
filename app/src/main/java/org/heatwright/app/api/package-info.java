/**
 * The HTTP API: every command that answers with a record, asked over HTTP, and the shelf and book
 * beside it. Requests, answers and the OpenAPI document all follow from the commands' own options
 * and records, so that they cannot say different things.
 */
@NullMarked
package org.heatwright.app.api;

import org.jspecify.annotations.NullMarked;
