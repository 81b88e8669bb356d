package org.heatwright.app.api;

import com.fasterxml.classmate.ResolvedType;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.Option;
import com.github.victools.jsonschema.generator.OptionPreset;
import com.github.victools.jsonschema.generator.SchemaBuilder;
import com.github.victools.jsonschema.generator.SchemaGenerator;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigBuilder;
import com.github.victools.jsonschema.generator.SchemaVersion;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * JSON Schemas (2020-12, as OpenAPI 3.1 takes them) of the records that are answered with. A key is
 * always there; what is not known is null.
 */
final class Schemas {

  private final SchemaBuilder builder;

  Schemas() {
    SchemaGeneratorConfigBuilder config =
        new SchemaGeneratorConfigBuilder(SchemaVersion.DRAFT_2020_12, OptionPreset.PLAIN_JSON)
            .with(Option.DEFINITIONS_FOR_ALL_OBJECTS, Option.NULLABLE_FIELDS_BY_DEFAULT)
            .with(Option.FLATTENED_OPTIONALS)
            .without(Option.SCHEMA_VERSION_INDICATOR);
    config
        .forFields()
        .withNullableCheck(field -> mayBeNull(field.getType().getErasedType()))
        .withRequiredCheck(
            field ->
                !mayBeNull(field.getType().getErasedType())
                    || !Asked.class.isAssignableFrom(field.getDeclaringType().getErasedType()))
        .withTargetTypeOverridesResolver(
            field -> {
              Class<?> plain = plain(field.getType());
              return plain == null ? null : List.of(field.getContext().resolve(plain));
            });
    config
        .forTypesInGeneral()
        .withDefinitionNamingStrategy((key, context) -> name(key.getType().getErasedType()));
    this.builder = new SchemaGenerator(config.build()).buildMultipleSchemaDefinitions();
  }

  /** Where the record's schema is. */
  ObjectNode reference(Class<? extends Record> record) {
    return builder.createSchemaReference(record);
  }

  /** Every schema that was referred to, by its name. */
  ObjectNode all() {
    return builder.collectDefinitions("components/schemas");
  }

  /** The record's name without what tells that it is JSON, after the one it stands in. */
  static String name(Class<?> record) {
    Class<?> outer = record.getEnclosingClass();
    String own = record.getSimpleName().replaceFirst("Json$", "");
    return outer == null ? own : name(outer) + own;
  }

  private static boolean mayBeNull(Class<?> type) {
    return type == Optional.class || primitive(type) != null;
  }

  private static @Nullable Class<?> plain(ResolvedType type) {
    return primitive(type.getErasedType());
  }

  private static @Nullable Class<?> primitive(Class<?> type) {
    if (type == OptionalInt.class) {
      return Integer.class;
    }
    if (type == OptionalLong.class) {
      return Long.class;
    }
    return type == OptionalDouble.class ? Double.class : null;
  }
}
