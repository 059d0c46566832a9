SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#operations",
  docExpansion: "none",
  // The document is checked by nobody outside.
  validatorUrl: null,
});
