package org.voltdocket.returned;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.kernel.Actor;
import org.voltdocket.returned.sampling.Draw;
import org.voltdocket.returned.sampling.LotResult;
import org.voltdocket.returned.sampling.Plan;
import org.voltdocket.returned.sampling.PlanTable;
import org.voltdocket.returned.sampling.Severity;
import org.voltdocket.returned.sampling.Switching;
import org.voltdocket.trail.Trail;

/** The lots in PostgreSQL. Locks in this order: lots, trail. */
@Service
@Transactional
class LotBook implements Lots {

    private final LotStore store;
    private final ReturnList lines;
    private final Trail trail;
    private final Clock clock;
    private final SecureRandom chance = new SecureRandom();

    LotBook(LotStore store, ReturnList lines, Trail trail, Clock clock) {
        this.store = store;
        this.lines = lines;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Lot.Source> sources(Actor actor) {
        BenchPeople.require(actor);
        return store.waiting().stream()
                .map(one -> new Lot.Source(
                        one.scope(), one.key(), one.name(), one.count(), switching(one.scope(), one.key())))
                .toList();
    }

    /** The switching rules see decided lots only. */
    private Switching.Standing switching(Lot.Scope scope, String key) {
        return Switching.after(store.of(scope, key).stream()
                .filter(lot -> lot.standing().verdict() != Lot.Verdict.OPEN)
                .map(LotBook::result)
                .toList());
    }

    private static LotResult result(Lot lot) {
        Plan tighter = PlanTable.plan(lot.severity(), lot.level(), lot.size(), PlanTable.tighter(lot.aql()));
        boolean accepted = lot.standing().verdict() == Lot.Verdict.ACCEPTED;
        return new LotResult(
                lot.severity(),
                lot.plan().acceptance(),
                accepted,
                accepted && lot.standing().nonconforming() <= tighter.acceptance());
    }

    @Override
    public Lot draw(Actor actor, Lot.Wish wish) {
        BenchPeople.require(actor);
        if (!PlanTable.AQLS.contains(wish.aql())) {
            throw new ReturnRefused("aql", "'aql' is one of " + PlanTable.AQLS + " per cent; read " + wish.aql());
        }
        store.lock();
        Map<String, UUID> waiting = store.waiting(wish.scope(), wish.key());
        if (waiting.size() < 2) {
            throw ReturnConflict.noLot(
                    "A lot has two batteries or more that wait for their outcome and were drawn for no other"
                            + " lot; here are " + waiting.size() + ". Nothing was drawn.");
        }
        Switching.Standing rules = switching(wish.scope(), wish.key());
        if (rules.discontinued()) {
            throw ReturnConflict.noLot("Five lots were not accepted on tightened inspection: sampling of this source is"
                    + " discontinued (ISO 2859-1, 9.4). Test every battery of it, and talk to whoever sends them.");
        }
        Severity severity = wish.reducedAgreed() && rules.mayReduce() ? Severity.REDUCED : rules.severity();
        if (rules.severity() == Severity.REDUCED && !wish.reducedAgreed()) {
            severity = Severity.NORMAL;
        }
        Plan plan = PlanTable.plan(severity, wish.level(), waiting.size(), wish.aql());
        long seed = chance.nextLong() >>> 1;
        List<UUID> order =
                Draw.order(seed, waiting.keySet()).stream().map(waiting::get).toList();
        String name = wish.scope() == Lot.Scope.WORKSHOP
                ? store.workshopName(wish.key()).orElse(wish.key())
                : wish.key();
        UUID id = store.add(
                wish, name, plan, severity, seed, order, clock.instant().truncatedTo(ChronoUnit.MICROS), actor.user());
        Lot lot = store.find(id).orElseThrow();
        trail.record(
                actor,
                "lot-drawn",
                lot.number(),
                Map.of(
                        "lot.source", name,
                        "lot.size", waiting.size(),
                        "lot.sample", plan.sampleSize(),
                        "lot.acceptance", plan.acceptance(),
                        "lot.severity", severity.id(),
                        "lot.seed", Long.toString(seed)));
        return lot;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Lot> all(Actor actor) {
        BenchPeople.require(actor);
        return store.all();
    }

    @Override
    @Transactional(readOnly = true)
    public Lot.Whole whole(Actor actor, UUID id) {
        BenchPeople.require(actor);
        Lot lot = store.find(id).orElseThrow(() -> new NotVisible("lot"));
        List<ReturnLine> drawn = lines.ofLot(id, clock.instant());
        List<Optional<Finding>> outcomes =
                drawn.stream().map(ReturnLine::outcome).toList();
        List<Boolean> in = Sample.members(lot.plan().sampleSize(), outcomes);
        List<Lot.Ranked> order = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i++) {
            order.add(new Lot.Ranked(i + 1, in.get(i), drawn.get(i)));
        }
        return new Lot.Whole(lot, order);
    }
}
