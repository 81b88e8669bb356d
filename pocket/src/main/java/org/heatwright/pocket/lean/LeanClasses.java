package org.heatwright.pocket.lean;

import java.util.Map;
import org.teavm.model.ClassHolder;
import org.teavm.model.ClassHolderTransformer;
import org.teavm.model.ClassHolderTransformerContext;
import org.teavm.model.FieldHolder;
import org.teavm.model.MethodHolder;
import org.teavm.model.ReferenceCache;
import org.teavm.model.ValueType;
import org.teavm.parsing.ClassRefsRenamer;

/**
 * A step of the compilation to JavaScript: texts and our own classes use the stand-ins of this
 * package. Java's own formatter and patterns would bring the ways of every language and the kind of
 * every letter into the page, more than all the rest of it; the core's sentences need none of that.
 */
public final class LeanClasses implements ClassHolderTransformer {

  private static final Map<String, String> STAND_INS =
      Map.of(
          "java.util.Formatter", LeanFormatter.class.getName(),
          "java.util.regex.Pattern", LeanPattern.class.getName(),
          "java.util.regex.Matcher", LeanMatcher.class.getName());

  private final ClassRefsRenamer renamer =
      new ClassRefsRenamer(new ReferenceCache(), name -> STAND_INS.getOrDefault(name, name));

  @Override
  public void transformClass(ClassHolder type, ClassHolderTransformerContext context) {
    String name = type.getName();
    if (!name.equals("java.lang.String")
        && (!name.startsWith("org.heatwright.")
            || name.startsWith(LeanClasses.class.getPackageName()))) {
      return;
    }
    for (MethodHolder method : type.getMethods()) {
      if (method.getProgram() != null) {
        renamer.rename(method.getProgram());
      }
    }
    for (FieldHolder field : type.getFields()) {
      if (field.getType() instanceof ValueType.Object object) {
        field.setType(
            ValueType.object(STAND_INS.getOrDefault(object.getClassName(), object.getClassName())));
      }
    }
  }
}
