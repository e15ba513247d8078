package underhook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import underhook.app.evening.QuoteJob;
import underhook.core.billing.Invoice;
import underhook.core.billing.Quote;

/** Tells what a planned day, flown so often, will take and cost. */
@Command(
        name = "quote",
        mixinStandardHelpOptions = true,
        description =
                "Hours and price of a job like a planned day, as a range, with what it assumes. The"
                        + " books name the tariff and the chance of a day that can be flown.")
final class QuoteCommand implements Callable<Integer> {
    private final Function<QuoteJob.Request, QuoteJob.Result> quoting;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Parameters(index = "1", paramLabel = "PLAN", description = "its plan.json")
    private Path plan;

    @Option(
            names = "--books",
            required = true,
            paramLabel = "FILE",
            description = "YAML with tariff and offer")
    private Path books;

    @Option(names = "--learned", paramLabel = "FILE", description = "learned.csv of earlier days")
    private @Nullable Path learned;

    QuoteCommand(Function<QuoteJob.Request, QuoteJob.Result> quoting) {
        this.quoting = quoting;
    }

    @Override
    public Integer call() {
        QuoteJob.Result result =
                quoting.apply(
                        new QuoteJob.Request(folder, plan, books, Optional.ofNullable(learned)));
        PrintWriter printer = spec.commandLine().getOut();
        result.faults().forEach(printer::println);
        result.refusals().stream().map(Words::of).forEach(printer::println);
        result.quote().ifPresent(quote -> tell(quote, result, printer));
        return result.quote().isPresent() ? Exit.DONE : Exit.INPUT_REFUSED;
    }

    private static void tell(Quote quote, QuoteJob.Result result, PrintWriter printer) {
        printer.println(
                "An estimate, no offer: from the 10 % to the 90 % point, the likely between.");
        printer.printf(
                "  flying on one day    %s to %s, likely %s h:min%n",
                hours(quote.flyingS().lowS()),
                hours(quote.flyingS().highS()),
                hours(quote.flyingS().likelyS()));
        printer.printf(
                "  engine on, one day   %s to %s, likely %s h:min%n",
                hours(quote.engineS().lowS()),
                hours(quote.engineS().highS()),
                hours(quote.engineS().likelyS()));
        printer.printf(
                "  days lost to weather %d to %d, likely %d%n",
                quote.waitingDays().low(),
                quote.waitingDays().high(),
                quote.waitingDays().likely());
        printer.printf(
                "  price of all         %s to %s, likely %s %s%n",
                Words.money(quote.cents().low()),
                Words.money(quote.cents().high()),
                Words.money(quote.cents().likely()),
                result.currency());
        printer.println("One day of the likely case:");
        for (Invoice.Line line : quote.likelyDay().lines()) {
            printer.printf(
                    "  %s: %d x %s %s (%s)%n",
                    line.name(),
                    line.units(),
                    Words.money(line.centsPerUnit()),
                    result.currency(),
                    line.unit());
        }
        printer.println("It assumes:");
        result.assumptions().forEach(line -> printer.println("  " + line));
    }

    private static String hours(double s) {
        long minutes = (long) Math.ceil(s / 60 - 1e-9);
        return String.format(Locale.ROOT, "%d:%02d", minutes / 60, minutes % 60);
    }
}
