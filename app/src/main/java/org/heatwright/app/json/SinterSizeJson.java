package org.heatwright.app.json;

import java.util.List;

/**
 * What {@code sinter size --json} prints.
 *
 * @param clay its word in files
 * @param wantedMillimetres after the firing; a ring's inner diameter
 * @param makeMillimetres bone dry
 * @param shrinkagePercent linear, bone dry to fired
 * @param strips how many measured strips it rests on
 * @param notes what to know
 */
public record SinterSizeJson(
    String clay,
    double wantedMillimetres,
    LikelyJson makeMillimetres,
    LikelyJson shrinkagePercent,
    int strips,
    List<String> notes) {}
