package org.heatwright.app.files;

import org.heatwright.material.Material;

/** {@code material.yaml}: a material of one's own, for use with more than one body. */
public final class MaterialFile {

  private MaterialFile() {}

  public static Material read(String text, String fileName) {
    YamlMap file = YamlFile.read(text, fileName, FileKind.MATERIAL);
    return MaterialField.table(file.place(), file);
  }
}
