package underhook.web;

import org.junit.jupiter.api.extension.AfterTestExecutionCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Steps that stand on each other: after one that failed the others fail at once, not by waiting. */
final class Walk implements BeforeEachCallback, AfterTestExecutionCallback {
    private static final ExtensionContext.Namespace HERE =
            ExtensionContext.Namespace.create(Walk.class);
    private static final String FAILED = "failed";

    @Override
    public void beforeEach(ExtensionContext step) {
        Object failed = ofClass(step).get(FAILED);
        if (failed != null) {
            throw new AssertionError("not walked, because an earlier step failed: " + failed);
        }
    }

    @Override
    public void afterTestExecution(ExtensionContext step) {
        if (step.getExecutionException().isPresent()) {
            ofClass(step).put(FAILED, step.getDisplayName());
        }
    }

    private static ExtensionContext.Store ofClass(ExtensionContext step) {
        return step.getParent().orElseThrow().getStore(HERE);
    }
}
