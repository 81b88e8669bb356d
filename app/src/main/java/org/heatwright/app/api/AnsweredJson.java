package org.heatwright.app.api;

import com.fasterxml.jackson.annotation.JsonAnyGetter;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;

/**
 * A command's answer.
 *
 * @param exit 0 done; 1 done, with a finding that says stop
 * @param answers the record that the command prints with {@code --json}, under "answer"; a command
 *     that has several answers names the unusual ones
 * @param files what it wrote
 */
record AnsweredJson(
    int exit, @JsonAnyGetter Map<String, JsonNode> answers, List<WrittenFile> files) {}
