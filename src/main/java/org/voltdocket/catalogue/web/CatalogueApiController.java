package org.voltdocket.catalogue.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.catalogue.BatteryType;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.ImportResult;
import org.voltdocket.catalogue.Product;
import org.voltdocket.catalogue.Supplier;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.RequestException;

/** The catalogue by script. */
@RestController
@RequestMapping(path = "/api/v1/catalogue", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Catalogue", description = "Battery types, production ranges and sales.")
class CatalogueApiController {

    private final CatalogueService catalogue;

    CatalogueApiController(CatalogueService catalogue) {
        this.catalogue = catalogue;
    }

    /** What stands now. */
    record Standing(List<Supplier> suppliers, List<TypeView> types) {}

    /** A battery type. */
    record TypeView(
            String code,
            String name,
            String supplier,
            String chemistry,
            double capacityAh,
            Double ratedCrankingA,
            String crankingStandard,
            String serialPrefix) {

        static TypeView of(BatteryType type) {
            return new TypeView(
                    type.code(),
                    type.name(),
                    type.supplier(),
                    type.chemistry().id(),
                    type.capacityAh(),
                    type.ratedCrankingA(),
                    type.crankingStandard() == null
                            ? null
                            : type.crankingStandard().id(),
                    type.serialPrefix());
        }
    }

    /** What a serial is. */
    record ProductView(Supplier supplier, TypeView type, String batch, LocalDate producedOn) {}

    @Operation(operationId = "readCatalogue", summary = "Suppliers and battery types (not for workshops)")
    @GetMapping
    Standing read(Actor actor) {
        CataloguePageController.forTheDistributor(actor);
        return new Standing(
                catalogue.suppliers(),
                catalogue.types().stream().map(TypeView::of).toList());
    }

    @Operation(operationId = "readProduct", summary = "Type, batch and supplier of a serial (not for workshops)")
    @ApiResponse(responseCode = "200", description = "what the serial is")
    @ApiResponse(responseCode = "404", description = "the serial is in no production range")
    @GetMapping("/product")
    ProductView product(
            Actor actor, @Parameter(description = "as on the battery's label") @RequestParam String serial) {
        CataloguePageController.forTheDistributor(actor);
        return catalogue
                .of(parsed(serial))
                .map(CatalogueApiController::view)
                .orElseThrow(() -> RequestException.of(
                        404, "not-found", "The serial is in no production range of the catalogue."));
    }

    private static BatterySerial parsed(String serial) {
        try {
            return BatterySerial.parse(serial);
        } catch (IllegalArgumentException e) {
            throw RequestException.malformed(e.getMessage());
        }
    }

    private static ProductView view(Product product) {
        return new ProductView(
                product.supplier(),
                TypeView.of(product.type()),
                product.batch(),
                product.range().producedOn());
    }

    @Operation(
            operationId = "importCatalogue",
            summary = "Import a CSV file into the catalogue, completely or not at all (administrator)",
            description = "The header determines the table: supplier,name; type,name,supplier,chemistry,capacity_ah,"
                    + "[rated_cranking_a],[cranking_standard],[serial_prefix]; type,batch,first_serial,last_serial,"
                    + "produced_on,count; type,batch,month,sold. A row of a key that stands corrects it; a cell under"
                    + " 'withdrawn' ends it. What stood before is kept.")
    @ApiResponse(responseCode = "200", description = "imported: numbers of rows added, corrected, unchanged, withdrawn")
    @ApiResponse(responseCode = "422", description = "nothing was imported; errors by line")
    @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    ImportResult take(Actor actor, @RequestParam MultipartFile file) throws IOException {
        return catalogue.take(actor, file.getOriginalFilename(), file.getBytes());
    }
}
