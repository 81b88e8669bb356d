package org.heatwright.app.json;

import java.util.Optional;

/**
 * What {@code serve --json} and {@code demo --json} print once the bench is open.
 *
 * @param address where to open it, on this machine
 * @param store the store's file; null for the demo, whose store is gone when it stops
 */
public record ServingJson(String address, Optional<String> store) {}
