package underhook.checks;

import com.github.javaparser.JavaParser;
import com.github.javaparser.ParserConfiguration;
import com.github.javaparser.ast.CompilationUnit;
import com.github.javaparser.ast.body.FieldDeclaration;
import com.github.javaparser.ast.body.MethodDeclaration;
import com.github.javaparser.ast.body.Parameter;
import com.github.javaparser.ast.body.RecordDeclaration;
import com.github.javaparser.ast.body.VariableDeclarator;
import com.github.javaparser.ast.expr.LambdaExpr;
import com.github.javaparser.ast.type.Type;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Rules over one Java source: each returns what it finds wrong. */
final class SourceRules {
    private static final Pattern ENDING =
            Pattern.compile(
                    ".*[a-z0-9](M|M2|M3|Kg|S|N|V|NewtonM|J|W|Pa|K|Rad|MPerS|MPerS2|RadPerS|KgPerM|KgPerM3"
                            + "|KgPerS|NPerM|KPerM|Ratio|Factor|Coefficient|Fraction)");

    /** Positions stay in degrees, so that files read back exactly. */
    private static final Set<String> DEGREES = Set.of("latDeg", "lonDeg", "dLonDeg");

    private static final Set<String> NUMBERS =
            Set.of("double", "float", "double[]", "Double", "OptionalDouble", "double[][]");
    private static final Pattern SOURCE = Pattern.compile("@source\\s+([A-Z0-9][A-Z0-9-]*)");

    private SourceRules() {}

    static CompilationUnit parse(String source) {
        var configuration =
                new ParserConfiguration()
                        .setLanguageLevel(ParserConfiguration.LanguageLevel.JAVA_17);
        return new JavaParser(configuration)
                .parse(source)
                .getResult()
                .orElseThrow(() -> new IllegalArgumentException("a source cannot be parsed."));
    }

    /** Fields, record components, parameters and methods that hold a double end in a unit. */
    static List<String> unitEndings(String source) {
        CompilationUnit unit = parse(source);
        List<String> wrong = new ArrayList<>();
        for (FieldDeclaration field : unit.findAll(FieldDeclaration.class)) {
            for (VariableDeclarator variable : field.getVariables()) {
                judge(variable.getType(), variable.getNameAsString(), wrong);
            }
        }
        unit.findAll(Parameter.class).stream()
                .filter(parameter -> !parameter.getType().isUnknownType())
                .filter(
                        parameter ->
                                parameter
                                        .getParentNode()
                                        .filter(LambdaExpr.class::isInstance)
                                        .isEmpty())
                .forEach(
                        parameter ->
                                judge(parameter.getType(), parameter.getNameAsString(), wrong));
        unit.findAll(MethodDeclaration.class)
                .forEach(method -> judge(method.getType(), method.getNameAsString(), wrong));
        return wrong;
    }

    private static void judge(Type type, String name, List<String> wrong) {
        if (!NUMBERS.contains(type.asString())) {
            return;
        }
        boolean constant = name.equals(name.toUpperCase(Locale.ROOT)) && name.length() > 1;
        String camel = constant ? camel(name) : name;
        if (!DEGREES.contains(camel) && !ENDING.matcher(camel).matches()) {
            wrong.add(name);
        }
    }

    private static String camel(String constant) {
        StringBuilder camel = new StringBuilder();
        for (String word : constant.toLowerCase(Locale.ROOT).split("_")) {
            camel.append(word.substring(0, 1).toUpperCase(Locale.ROOT)).append(word.substring(1));
        }
        return camel.substring(0, 1).toLowerCase(Locale.ROOT) + camel.substring(1);
    }

    /** Nm reads as newton-metre and as nautical mile. */
    static List<String> ambiguousNm(String source) {
        List<String> wrong = new ArrayList<>();
        Matcher matcher = Pattern.compile("\\b[a-z]\\w*Nm\\b").matcher(source);
        while (matcher.find()) {
            wrong.add(matcher.group());
        }
        return wrong;
    }

    /** At most four parameters; record headers, and the factories that mirror them, are exempt. */
    static List<String> tooManyParameters(String source) {
        return parse(source).findAll(MethodDeclaration.class).stream()
                .filter(method -> method.getParameters().size() > 4)
                .filter(method -> !isRecordFactory(method))
                .map(MethodDeclaration::getNameAsString)
                .toList();
    }

    private static boolean isRecordFactory(MethodDeclaration method) {
        return method.isStatic()
                && method.getNameAsString().startsWith("of")
                && method.getParentNode().filter(RecordDeclaration.class::isInstance).isPresent();
    }

    /** Keys after @source. */
    static List<String> sourceKeys(String source) {
        List<String> keys = new ArrayList<>();
        Matcher matcher = SOURCE.matcher(source);
        while (matcher.find()) {
            keys.add(matcher.group(1));
        }
        return keys;
    }

    /** String.format and formatted must name a locale. */
    static List<String> formatsWithoutLocale(String source) {
        List<String> wrong = new ArrayList<>();
        Matcher matcher =
                Pattern.compile(
                                "String\\s*\\.\\s*format\\s*\\(\\s*+(?!Locale|locale)[^\\s]{0,20}"
                                        + "|\\.formatted\\s*\\(")
                        .matcher(source);
        while (matcher.find()) {
            wrong.add(matcher.group());
        }
        return wrong;
    }

    static boolean catchesEverything(String source) {
        return Pattern.compile("catch\\s*\\(\\s*(final\\s+)?(Exception|Throwable)\\s")
                .matcher(source)
                .find();
    }

    static boolean prints(String source) {
        return Pattern.compile("\\bSystem\\s*\\.\\s*(out|err)\\b").matcher(source).find();
    }
}
