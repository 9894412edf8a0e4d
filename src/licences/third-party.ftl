<#-- The third-party components of a jar and their licences, one per line: name, version, licences, address; separated by tabs. -->
<#list dependencyMap as entry>
<#assign project = entry.getKey()/>
<#assign licences = entry.getValue()/>
${project.groupId}:${project.artifactId}	${project.version}	<#list licences as licence>${licence}<#sep>; </#list>	${project.url!""}
<#if project.artifactId == "openpdf">
DejaVu fonts (Sans Condensed, Sans Mono)	2.37	Bitstream Vera and Arev font licences	https://dejavu-fonts.github.io/
</#if>
</#list>
