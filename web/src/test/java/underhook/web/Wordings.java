package underhook.web;

import com.github.javaparser.JavaParser;
import com.github.javaparser.ParserConfiguration;
import com.github.javaparser.ast.CompilationUnit;
import com.github.javaparser.ast.Node;
import com.github.javaparser.ast.body.FieldDeclaration;
import com.github.javaparser.ast.body.MethodDeclaration;
import com.github.javaparser.ast.body.VariableDeclarator;
import com.github.javaparser.ast.expr.BinaryExpr;
import com.github.javaparser.ast.expr.ConditionalExpr;
import com.github.javaparser.ast.expr.EnclosedExpr;
import com.github.javaparser.ast.expr.Expression;
import com.github.javaparser.ast.expr.MethodCallExpr;
import com.github.javaparser.ast.expr.NameExpr;
import com.github.javaparser.ast.expr.ObjectCreationExpr;
import com.github.javaparser.ast.expr.StringLiteralExpr;
import com.github.javaparser.ast.expr.SwitchExpr;
import com.github.javaparser.ast.stmt.BlockStmt;
import com.github.javaparser.ast.stmt.ExpressionStmt;
import com.github.javaparser.ast.stmt.ReturnStmt;
import com.github.javaparser.ast.stmt.Statement;
import com.github.javaparser.ast.stmt.SwitchEntry;
import com.github.javaparser.ast.stmt.ThrowStmt;
import com.github.javaparser.ast.stmt.YieldStmt;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What a source can say, read from the source itself: each string it puts together, with a name or a number for
 * every value, once for each branch. A method of the same file that makes a part of it is read too.
 */
final class Wordings {
    private static final int DEEPEST = 4;
    private static final int MOST = 400;
    private static final Pattern OF_A_NUMBER =
            Pattern.compile(
                    "^(?: ?(?:kg|km|m|s|min|kt|cm|°C?|%)(?![a-z])| to \\d).*", Pattern.DOTALL);

    /** A value whose own words are not read here. */
    private static final String HOLE = "\u0000";

    private final CompilationUnit unit;

    /** Methods whose words are parts of what others say. */
    private final Set<MethodDeclaration> parts = new HashSet<>();

    private Wordings(CompilationUnit unit) {
        this.unit = unit;
    }

    /** All texts of a source that a person may read: of more than one word, whole, and not thrown. */
    static Set<String> of(Path source) throws IOException {
        var configuration =
                new ParserConfiguration()
                        .setLanguageLevel(ParserConfiguration.LanguageLevel.JAVA_17);
        CompilationUnit unit =
                new JavaParser(configuration)
                        .parse(Files.readString(source))
                        .getResult()
                        .orElseThrow();
        return new Wordings(unit).all();
    }

    private Set<String> all() {
        List<Expression> wholes =
                Stream.concat(
                                unit.findAll(StringLiteralExpr.class).stream(),
                                unit.findAll(NameExpr.class).stream()
                                        .filter(name -> !named(name, 0).contains(HOLE)))
                        .map(Wordings::whole)
                        .filter(Wordings::isSaid)
                        .toList();
        wholes.forEach(root -> texts(root, 0));
        Set<String> said = new LinkedHashSet<>();
        for (Expression root : wholes) {
            if (within(root, MethodDeclaration.class).filter(parts::contains).isEmpty()) {
                texts(root, 0).stream()
                        .map(Wordings::filled)
                        .filter(text -> text.matches("(?s)\\S.*[a-z] .*"))
                        .forEach(said::add);
            }
        }
        return said;
    }

    /**
     * Not what is thrown or logged, not a pattern to read by; a value of a method is read where it is named.
     */
    private static boolean isSaid(Expression root) {
        Node holder = root.getParentNode().orElseThrow();
        boolean thrown =
                within(root, ThrowStmt.class).isPresent()
                        || (holder instanceof ObjectCreationExpr made
                                && made.getTypeAsString().endsWith("Exception"));
        boolean logged =
                holder instanceof MethodCallExpr call && call.getNameAsString().equals("log");
        boolean read =
                holder instanceof VariableDeclarator value
                        ? value.getParentNode().filter(FieldDeclaration.class::isInstance).isEmpty()
                                || !value.getType().asString().equals("String")
                        : within(root, FieldDeclaration.class).isPresent();
        return !thrown && !logged && !read;
    }

    /** What of that kind it stands in, the nearest. */
    private static <N extends Node> Optional<N> within(Node node, Class<N> kind) {
        Optional<Node> up = node.getParentNode();
        while (up.isPresent() && !kind.isInstance(up.get())) {
            up = up.get().getParentNode();
        }
        return up.map(kind::cast);
    }

    /** The whole expression that a literal is a part of. */
    private static Expression whole(Expression part) {
        Expression whole = part;
        for (Optional<Expression> up = around(whole); up.isPresent(); up = around(whole)) {
            whole = up.get();
        }
        return whole;
    }

    private static Optional<Expression> around(Expression part) {
        Node parent = part.getParentNode().orElseThrow();
        if (parent instanceof BinaryExpr plus && plus.getOperator() == BinaryExpr.Operator.PLUS) {
            return Optional.of(plus);
        }
        if (parent instanceof EnclosedExpr enclosed) {
            return Optional.of(enclosed);
        }
        if (parent instanceof ConditionalExpr choice && !choice.getCondition().equals(part)) {
            return Optional.of(choice);
        }
        if (parent instanceof MethodCallExpr call && isFormat(call) && format(call).equals(part)) {
            return Optional.of(call);
        }
        if (parent instanceof YieldStmt || parent instanceof ExpressionStmt) {
            Node holder = parent.getParentNode().orElseThrow();
            return holder instanceof BlockStmt
                    ? Optional.empty()
                    : holder.getParentNode()
                            .filter(SwitchExpr.class::isInstance)
                            .map(SwitchExpr.class::cast);
        }
        return Optional.empty();
    }

    private static boolean isFormat(MethodCallExpr call) {
        return call.getNameAsString().equals("format")
                && call.getScope().filter(scope -> scope.toString().equals("String")).isPresent();
    }

    private static Expression format(MethodCallExpr call) {
        return call.getArgument(1);
    }

    private List<String> texts(Expression part, int depth) {
        if (part instanceof StringLiteralExpr literal) {
            return List.of(literal.asString());
        }
        if (part instanceof EnclosedExpr enclosed) {
            return texts(enclosed.getInner(), depth);
        }
        if (part instanceof ConditionalExpr choice) {
            return together(texts(choice.getThenExpr(), depth), texts(choice.getElseExpr(), depth));
        }
        if (part instanceof SwitchExpr choice) {
            List<String> all = new ArrayList<>();
            for (SwitchEntry entry : choice.getEntries()) {
                for (Statement arm : entry.getStatements()) {
                    if (arm instanceof ExpressionStmt said) {
                        all.addAll(texts(said.getExpression(), depth));
                    }
                    arm.findAll(YieldStmt.class)
                            .forEach(said -> all.addAll(texts(said.getExpression(), depth)));
                }
            }
            return all;
        }
        if (part instanceof BinaryExpr plus && plus.getOperator() == BinaryExpr.Operator.PLUS) {
            return product(texts(plus.getLeft(), depth), texts(plus.getRight(), depth));
        }
        if (part instanceof MethodCallExpr call && isFormat(call)) {
            return texts(format(call), depth).stream()
                    .map(
                            text ->
                                    text.replaceAll("%[\\d.+,\u0000-]*[a-zA-Z]", HOLE)
                                            .replace("%%", "%"))
                    .toList();
        }
        if (part instanceof MethodCallExpr call && call.getScope().isEmpty() && depth < DEEPEST) {
            return own(call, depth);
        }
        if (part instanceof NameExpr name && depth < DEEPEST) {
            return named(name, depth);
        }
        return List.of(HOLE);
    }

    /** What a method of the same file says. */
    private List<String> own(MethodCallExpr call, int depth) {
        List<MethodDeclaration> found =
                unit.findAll(MethodDeclaration.class).stream()
                        .filter(one -> one.getNameAsString().equals(call.getNameAsString()))
                        .filter(one -> one.getParameters().size() == call.getArguments().size())
                        .filter(one -> one.getType().asString().equals("String"))
                        .toList();
        List<String> all = new ArrayList<>();
        for (MethodDeclaration method : found) {
            for (ReturnStmt said : method.findAll(ReturnStmt.class)) {
                all.addAll(texts(said.getExpression().orElseThrow(), depth + 1));
            }
            if (!all.stream().allMatch(HOLE::equals)) {
                parts.add(method);
            }
        }
        return all.isEmpty() ? List.of(HOLE) : all.stream().distinct().toList();
    }

    /** A constant of the file, or what a value of the method was set to. */
    private List<String> named(NameExpr name, int depth) {
        List<VariableDeclarator> found =
                unit.findAll(VariableDeclarator.class).stream()
                        .filter(one -> one.getNameAsString().equals(name.getNameAsString()))
                        .filter(one -> one.getType().asString().equals("String"))
                        .filter(one -> one.getInitializer().isPresent())
                        .filter(
                                one ->
                                        within(one, FieldDeclaration.class).isPresent()
                                                || within(one, MethodDeclaration.class)
                                                        .equals(
                                                                within(
                                                                        name,
                                                                        MethodDeclaration.class)))
                        .toList();
        return found.size() == 1
                ? texts(found.get(0).getInitializer().orElseThrow(), depth + 1)
                : List.of(HOLE);
    }

    private static List<String> together(Collection<String> one, Collection<String> other) {
        Set<String> all = new LinkedHashSet<>(one);
        all.addAll(other);
        return List.copyOf(all);
    }

    private static List<String> product(List<String> left, List<String> right) {
        if (left.size() * right.size() > MOST) {
            throw new IllegalStateException("too many ways to say " + left.get(0));
        }
        return left.stream()
                .flatMap(start -> right.stream().map(end -> start + end))
                .distinct()
                .toList();
    }

    /** A number before a unit, else a name. */
    private static String filled(String text) {
        StringBuilder said = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            said.append(
                    text.charAt(i) != HOLE.charAt(0)
                            ? text.substring(i, i + 1)
                            : OF_A_NUMBER.matcher(text.substring(i + 1)).matches() ? "7" : "X1");
        }
        return said.toString();
    }
}
