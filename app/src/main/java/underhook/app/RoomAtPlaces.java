package underhook.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import underhook.app.port.Fault;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.ReadJob;
import underhook.core.finding.FindingCode;
import underhook.core.job.PlaceId;
import underhook.core.plan.PlaceRoom;
import underhook.planner.order.PlaceRooms;

/** Says which headings have room at a job's places with which line, before anything is planned. */
public final class RoomAtPlaces {
    /**
     * What came of it.
     *
     * @param faults of the job, or of the place asked for; when there are any, nothing was worked out
     */
    public record Result(List<Fault> faults, List<PlaceRoom> rooms) {
        public Result {
            faults = List.copyOf(faults);
            rooms = List.copyOf(rooms);
        }
    }

    private final JobReader jobs;

    public RoomAtPlaces(JobReader jobs) {
        this.jobs = jobs;
    }

    /**
     * Room at the places that the job's loads use.
     *
     * @param place only this one; all when it is blank
     */
    public Result find(Path jobFolder, String place) {
        JobReading reading = jobs.read(jobFolder);
        if (reading.job().isEmpty()) {
            return new Result(reading.faults(), List.of());
        }
        ReadJob job = reading.job().get();
        Optional<PlaceId> wanted =
                place.isBlank() ? Optional.empty() : Optional.of(new PlaceId(place));
        if (wanted.isPresent() && job.job().findPlace(wanted.get()).isEmpty()) {
            return new Result(List.of(unknown(place)), List.of());
        }
        return new Result(
                List.of(),
                PlaceRooms.of(job.job(), job.ground(), wanted.map(List::of).orElse(List.of())));
    }

    private static Fault unknown(String place) {
        return new Fault(
                FindingCode.ID_UNKNOWN,
                "places",
                0,
                "",
                "the job has no such place",
                place,
                "an id of the places file");
    }
}
