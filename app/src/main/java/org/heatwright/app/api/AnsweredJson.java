package org.heatwright.app.api;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;

/**
 * A command's answer.
 *
 * @param exit 0 done; 1 done, with a finding that says stop
 * @param answer the record that the command prints with {@code --json}
 * @param files what it wrote
 */
record AnsweredJson(int exit, JsonNode answer, List<WrittenFile> files) {}
