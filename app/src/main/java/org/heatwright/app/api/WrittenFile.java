package org.heatwright.app.api;

import java.util.Optional;

/**
 * A file that a command wrote.
 *
 * @param name in the request's folder
 * @param text what it says, where it is text
 * @param base64 what it holds, where it is not
 */
record WrittenFile(String name, Optional<String> text, Optional<String> base64) {}
