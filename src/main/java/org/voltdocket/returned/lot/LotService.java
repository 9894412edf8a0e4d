package org.voltdocket.returned.lot;

import java.security.SecureRandom;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.BenchAccess;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.ReturnListRepository;
import org.voltdocket.returned.sampling.InspectionSeverity;
import org.voltdocket.returned.sampling.LotResult;
import org.voltdocket.returned.sampling.RandomDraw;
import org.voltdocket.returned.sampling.SamplingPlan;
import org.voltdocket.returned.sampling.SamplingPlanTable;
import org.voltdocket.returned.sampling.SwitchingRules;
import org.voltdocket.trail.Trail;

/** Draws samples of returned batteries for testing (ISO 2859-1). For actors who may audit. Locks in this order: lots, trail. */
@Service
@Transactional
public class LotService {

    private final LotRepository store;
    private final ReturnListRepository list;
    private final Trail trail;
    private final Clock clock;
    private final SecureRandom chance = new SecureRandom();

    LotService(LotRepository store, ReturnListRepository list, Trail trail, Clock clock) {
        this.store = store;
        this.list = list;
        this.trail = trail;
        this.clock = clock;
    }

    /** Workshops and batches with pending batteries, most first. */
    @Transactional(readOnly = true)
    public List<Lot.Source> sources(Actor actor) {
        BenchAccess.require(actor);
        return store.waiting().stream()
                .map(one -> new Lot.Source(
                        one.scope(), one.key(), one.name(), one.count(), switching(one.scope(), one.key())))
                .toList();
    }

    /** The switching rules see decided lots only. */
    private SwitchingRules.State switching(Lot.Scope scope, String key) {
        return SwitchingRules.after(store.of(scope, key).stream()
                .filter(lot -> lot.progress().disposition() != Lot.Disposition.OPEN)
                .map(LotService::result)
                .toList());
    }

    private static LotResult result(Lot lot) {
        SamplingPlan tighter =
                SamplingPlanTable.plan(lot.severity(), lot.level(), lot.size(), SamplingPlanTable.tighter(lot.aql()));
        boolean accepted = lot.progress().disposition() == Lot.Disposition.ACCEPTED;
        return new LotResult(
                lot.severity(),
                lot.plan().acceptance(),
                accepted,
                accepted && lot.progress().nonconforming() <= tighter.acceptance());
    }

    /**
     * Forms a lot of all pending batteries of a source and draws their order from a random seed, which is stored.
     *
     * @throws RequestException (409) if fewer than two wait, or inspection of the source is discontinued
     */
    public Lot draw(Actor actor, Lot.Request wish) {
        BenchAccess.require(actor);
        if (!SamplingPlanTable.AQLS.contains(wish.aql())) {
            throw ReturnErrors.invalid(
                    "aql", "'aql' is one of " + SamplingPlanTable.AQLS + " per cent; read " + wish.aql());
        }
        store.lock();
        Map<String, UUID> waiting = store.waiting(wish.scope(), wish.key());
        if (waiting.size() < 2) {
            throw ReturnErrors.noLot(
                    "A lot has two batteries or more that wait for their outcome and were drawn for no other"
                            + " lot; here are " + waiting.size() + ". Nothing was drawn.");
        }
        SwitchingRules.State rules = switching(wish.scope(), wish.key());
        if (rules.discontinued()) {
            throw ReturnErrors.noLot("Five lots were not accepted on tightened inspection: sampling of this source is"
                    + " discontinued (ISO 2859-1, 9.4). Test every battery of it, and talk to whoever sends them.");
        }
        InspectionSeverity severity =
                wish.reducedAgreed() && rules.mayReduce() ? InspectionSeverity.REDUCED : rules.severity();
        if (rules.severity() == InspectionSeverity.REDUCED && !wish.reducedAgreed()) {
            severity = InspectionSeverity.NORMAL;
        }
        SamplingPlan plan = SamplingPlanTable.plan(severity, wish.level(), waiting.size(), wish.aql());
        long seed = chance.nextLong() >>> 1;
        List<UUID> order = RandomDraw.order(seed, waiting.keySet()).stream()
                .map(waiting::get)
                .toList();
        String name = wish.scope() == Lot.Scope.WORKSHOP
                ? store.workshopName(wish.key()).orElse(wish.key())
                : wish.key();
        UUID id = store.add(wish, name, plan, severity, seed, order, clock.instant(), actor.user());
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

    /** All lots, the latest first. */
    @Transactional(readOnly = true)
    public List<Lot> all(Actor actor) {
        BenchAccess.require(actor);
        return store.all();
    }

    /** @throws org.voltdocket.kernel.RequestException (404) if there is none */
    @Transactional(readOnly = true)
    public Lot.Details whole(Actor actor, UUID id) {
        BenchAccess.require(actor);
        Lot lot = store.find(id).orElseThrow(() -> RequestException.notFound("lot"));
        List<ReturnListItem> drawn = list.ofLot(id);
        List<Optional<BenchOutcome>> outcomes =
                drawn.stream().map(ReturnListItem::outcome).toList();
        List<Boolean> in = LotSample.members(lot.plan().sampleSize(), outcomes);
        List<Lot.Ranked> order = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i++) {
            order.add(new Lot.Ranked(i + 1, in.get(i), drawn.get(i)));
        }
        return new Lot.Details(lot, order);
    }
}
