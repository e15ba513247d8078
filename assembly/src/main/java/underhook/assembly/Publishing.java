package underhook.assembly;

import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import underhook.adapter.folder.OutputFolder;
import underhook.adapter.mapfile.GeoJsonWriter;
import underhook.adapter.mapfile.GpxWriter;
import underhook.adapter.mapfile.KmlWriter;
import underhook.adapter.paper.CardsPdf;
import underhook.adapter.planfile.PlanJsonWriter;
import underhook.adapter.table.FindingsCsvWriter;
import underhook.adapter.table.LoadsCsvWriter;
import underhook.app.PlanDay;
import underhook.app.port.OutputWriter;
import underhook.app.port.Refusal;

/** The output folder with every file that a plan has. */
final class Publishing implements PlanDay.OutFolder {
    private static final FindingsCsvWriter FINDINGS = new FindingsCsvWriter();
    private static final OutputFolder.Writers WRITERS =
            new OutputFolder.Writers(
                    List.of(
                            new PlanJsonWriter(),
                            new GeoJsonWriter(),
                            new GpxWriter(),
                            new KmlWriter(),
                            new CardsPdf(),
                            new LoadsCsvWriter(),
                            FINDINGS),
                    FINDINGS,
                    InstantSource.system());

    private final OutputFolder folder;

    private Publishing(OutputFolder folder) {
        this.folder = folder;
    }

    static PlanDay.OutFolder open(Path out) throws IOException {
        return new Publishing(OutputFolder.open(out, WRITERS));
    }

    @Override
    public List<Path> publish(OutputWriter.Output output) throws IOException {
        return folder.publish(output);
    }

    @Override
    public List<Path> refuse(Refusal refusal) throws IOException {
        return folder.refuse(refusal);
    }

    @Override
    public void close() throws IOException {
        folder.close();
    }
}
