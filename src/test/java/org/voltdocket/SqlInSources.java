package org.voltdocket;

import com.sun.source.tree.AnnotationTree;
import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** Finds SQL in Java sources: string constants, also those joined by +, and {@code @Table}. */
final class SqlInSources extends TreeScanner<Void, Void> {

    interface Found {

        /** The type is named without {@code org.voltdocket}; {@code " ? "} stands for what is no constant. */
        void text(String type, String text);
    }

    private final Found found;
    private String packageName = "";
    private String type = "";

    private SqlInSources(Found found) {
        this.found = found;
    }

    static void scan(List<Path> sources, Found found) throws IOException {
        var compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
            var units = manager.getJavaFileObjectsFromPaths(sources);
            var task = (JavacTask) compiler.getTask(null, manager, null, List.of("-proc:none"), null, units);
            for (CompilationUnitTree unit : task.parse()) {
                unit.accept(new SqlInSources(found), null);
            }
        }
    }

    @Override
    public Void visitCompilationUnit(CompilationUnitTree tree, Void unused) {
        packageName = tree.getPackageName().toString().replaceFirst("^org\\.voltdocket(\\.|$)", "");
        return super.visitCompilationUnit(tree, unused);
    }

    @Override
    public Void visitClass(ClassTree tree, Void unused) {
        String outer = type;
        if (outer.isEmpty()) {
            type = packageName + "." + tree.getSimpleName();
        }
        super.visitClass(tree, unused);
        type = outer;
        return null;
    }

    @Override
    public Void visitAnnotation(AnnotationTree tree, Void unused) {
        if (tree.getAnnotationType().toString().equals("Table")) {
            found.text(type, tree.getArguments().toString().replaceAll("(?s).*name = \"(\\w+)\".*", "from $1"));
        }
        return super.visitAnnotation(tree, unused);
    }

    @Override
    public Void visitBinary(BinaryTree tree, Void unused) {
        if (tree.getKind() != Tree.Kind.PLUS) {
            return super.visitBinary(tree, unused);
        }
        StringBuilder joined = new StringBuilder();
        append(tree, joined);
        found.text(type, joined.toString());
        return null;
    }

    private void append(Tree part, StringBuilder joined) {
        if (part instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
            append(sum.getLeftOperand(), joined);
            append(sum.getRightOperand(), joined);
        } else if (part instanceof LiteralTree literal) {
            joined.append(literal.getValue());
        } else {
            joined.append(" ? ");
            scan(part, null);
        }
    }

    @Override
    public Void visitLiteral(LiteralTree tree, Void unused) {
        if (tree.getValue() instanceof String text) {
            found.text(type, text);
        }
        return null;
    }
}
