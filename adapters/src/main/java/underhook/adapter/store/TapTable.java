package underhook.adapter.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.app.port.KeptTap;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** The log of taps as a table: rows are added at its end and never changed. */
final class TapTable {
    private static final String INSERT =
            "INSERT INTO tap (number, id, at, who, device, kind, loads, place, mass_kg, length_m,"
                    + " people, undoes, note, role, sent_at, received_at, anyway, plan, hash)"
                    + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

    private TapTable() {}

    /** All rows in the order they were taken in. */
    static List<KeptTap> list(Sql sql) throws SQLException {
        return sql.list(TapTable::read, "SELECT * FROM tap ORDER BY number");
    }

    /** Adds those that are not there; the row of each, within a transaction of the caller. */
    static List<KeptTap> add(Sql sql, List<KeptTap.Given> taps) throws SQLException {
        List<KeptTap> rows = new ArrayList<>();
        Optional<KeptTap> last =
                sql.list(TapTable::read, "SELECT * FROM tap ORDER BY number DESC LIMIT 1").stream()
                        .findFirst();
        for (KeptTap.Given given : taps) {
            Optional<KeptTap> there =
                    sql
                            .list(
                                    TapTable::read,
                                    "SELECT * FROM tap WHERE id = ?",
                                    given.tap().id())
                            .stream()
                            .findFirst();
            if (there.isEmpty()) {
                KeptTap row =
                        KeptTap.after(
                                last.map(KeptTap::hash).orElse(KeptTap.NO_HASH),
                                last.map(KeptTap::number).orElse(0L) + 1,
                                given);
                insert(sql, row);
                last = Optional.of(row);
                there = last;
            }
            rows.add(there.get());
        }
        return rows;
    }

    /** Adds a row as it is, with the hash that it has. */
    static void insert(Sql sql, KeptTap row) throws SQLException {
        Tap tap = row.tap();
        KeptTap.Arrival arrival = row.arrival();
        sql.update(
                INSERT,
                row.number(),
                tap.id(),
                tap.at().toString(),
                tap.by(),
                tap.device(),
                tap.kind().name(),
                String.join("|", tap.loads().stream().map(LoadId::value).toList()),
                tap.place().map(PlaceId::value).orElse(""),
                number(tap.amount().massKg()),
                number(tap.amount().lengthM()),
                tap.amount().people(),
                tap.undoes().orElse(""),
                tap.note(),
                arrival.role(),
                arrival.sentAt().toString(),
                arrival.receivedAt().toString(),
                arrival.anyway() ? 1 : 0,
                arrival.plan(),
                row.hash());
    }

    private static Object number(OptionalDouble value) {
        // The columns have no type of their own, so that what is not known can be an empty text.
        return value.isPresent() ? (Object) value.getAsDouble() : "";
    }

    private static OptionalDouble number(ResultSet row, String column) throws SQLException {
        return row.getString(column).isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(row.getDouble(column));
    }

    private static KeptTap read(ResultSet row) throws SQLException {
        Tap.Amount amount =
                new Tap.Amount(
                        number(row, "mass_kg"), number(row, "length_m"), row.getInt("people"));
        String loads = row.getString("loads");
        Tap tap =
                new Tap(
                        row.getString("id"),
                        Instant.parse(row.getString("at")),
                        row.getString("who"),
                        row.getString("device"),
                        TapKind.valueOf(row.getString("kind")),
                        loads.isEmpty()
                                ? List.of()
                                : Arrays.stream(loads.split("\\|")).map(LoadId::new).toList(),
                        stated(row.getString("place")).map(PlaceId::new),
                        amount,
                        stated(row.getString("undoes")),
                        row.getString("note"));
        KeptTap.Arrival arrival =
                new KeptTap.Arrival(
                        row.getString("role"),
                        Instant.parse(row.getString("sent_at")),
                        Instant.parse(row.getString("received_at")),
                        row.getInt("anyway") == 1,
                        row.getString("plan"));
        return new KeptTap(row.getLong("number"), tap, arrival, row.getString("hash"));
    }

    private static Optional<String> stated(String text) {
        return Optional.of(text).filter(one -> !one.isEmpty());
    }
}
